/** What devices kept that were taken out since: the captain takes it into the log, or leaves it aside. */
import type { Meeting, Person, TrayLine } from '@pitlamp/contract'
import { SvelteMap } from 'svelte/reactivity'
import { askDraft } from '../../api/drafts.ts'
import { askMeetings, askPeople } from '../../api/team.ts'
import { askTray, leaveAside, takeIn } from '../../api/tray.ts'
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { trayGroups, whyNot, type Group, type MeetingNames } from './tray-groups.ts'

export class TrayModel {
  readonly #of: () => MeetingPort
  problem = $state<string>()
  #lines = $state.raw<readonly TrayLine[]>([])
  #meetings = $state.raw<readonly Meeting[]>([])
  #people = $state.raw<readonly Person[]>([])
  readonly #asked: string[] = []
  /** Of other meetings, by id. */
  readonly #zones = new SvelteMap<string, string>()
  /** Why an entry was not taken in when it was tried, by its id. */
  readonly #why = new SvelteMap<string, string>()

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
  }

  /** The names change with documents, not with every tick. */
  readonly #crew = $derived.by(() => {
    const { state } = this.#of()
    return crewNames(state, state.record.log.at(-1)?.at ?? 0)
  })
  readonly groups = $derived.by(() =>
    trayGroups({ lines: this.#lines, namesOf: (id) => this.#namesOf(id), why: this.#why }),
  )

  async load(): Promise<void> {
    const reply = await askTray()
    if ('failed' in reply) {
      this.problem = reply.failed.sentence
      return
    }
    this.problem = undefined
    this.#lines = reply.ok.lines
    const known = [this.#of().id, ...this.#asked]
    const unknown = reply.ok.lines.map(({ meeting }) => meeting).filter((id) => !known.includes(id))
    if (unknown.length > 0) await this.#learn(unknown)
  }

  /** One entry, or all of the group that are still to be decided on. */
  async takeIn({ meeting, device, waiting }: Group, entry?: string): Promise<void> {
    const entries = entry === undefined ? [...waiting] : [entry]
    const reply = await takeIn({ meeting, device, entries })
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
    for (const result of 'ok' in reply ? reply.ok.results : []) {
      const why = whyNot(result)
      if (result.id === null) continue
      if (why === undefined) this.#why.delete(result.id)
      else this.#why.set(result.id, why)
    }
    await this.#loadAfter()
  }

  async leaveAside({ meeting, device, waiting }: Group, entry?: string): Promise<void> {
    const entries = entry === undefined ? [...waiting] : [entry]
    const reply = await leaveAside({ meeting, device, entries })
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
    await this.#loadAfter()
  }

  async #loadAfter(): Promise<void> {
    if (this.problem === undefined) await this.load()
  }

  async #learn(meetings: readonly string[]): Promise<void> {
    const [listed, people] = await Promise.all([askMeetings(), askPeople()])
    if ('ok' in listed) this.#meetings = listed.ok.meetings
    if ('ok' in people) this.#people = people.ok.people
    for (const meeting of meetings) {
      if (this.#asked.includes(meeting)) continue
      this.#asked.push(meeting)
      const draft = await askDraft(meeting, 'rules')
      const { timeZone } = (('ok' in draft && draft.ok.content) || {}) as { timeZone?: unknown }
      if (typeof timeZone === 'string') this.#zones.set(meeting, timeZone)
    }
  }

  #namesOf(id: string): MeetingNames {
    const { id: here, name } = this.#of()
    const { timeZone, nameOf } = this.#crew
    if (id === here) return { name, timeZone, nameOf }
    return {
      name: this.#meetings.find((meeting) => meeting.id === id)?.name ?? 'another meeting',
      timeZone: this.#zones.get(id) ?? timeZone,
      nameOf: (person) => this.#people.find((one) => one.id === person)?.name ?? nameOf(person),
    }
  }
}
