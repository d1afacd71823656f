/**
 * Everything a captain lays down before a meeting: four drafts, shared by the screens that plan, and adopting
 * them. One a meeting, so that what is typed on one screen stands on the next.
 */
import type { Person } from '@pitlamp/contract'
import {
  contradictions,
  DUTIES,
  inForce,
  phaseOf,
  type DocumentContent,
  type DocumentName,
} from '@pitlamp/race'
import { v7 } from 'uuid'
import { addPerson, askPeople } from '../api/team.ts'
import { keepPeople } from '../meeting/kept-drafts.ts'
import type { MeetingPort } from '../meeting/port.ts'
import { adoption } from './adoption.ts'
import { FIRST_CAR, FIRST_CREW, FIRST_PLAN, firstRules } from './defaults.ts'
import { Draft, textOf } from './draft.svelte.ts'

const models = new WeakMap<object, PlanningModel>()

/** The model of a meeting's planning screens; what nobody is typing in is read afresh. */
export function planningOf(meeting: MeetingPort): PlanningModel {
  const model = models.get(meeting) ?? outliving(() => new PlanningModel(() => meeting))
  models.set(meeting, model)
  void model.load()
  return model
}

/** What is derived belongs to the screen it was first made on, and ends with it, unless it is made apart. */
function outliving<T>(make: () => T): T {
  const made: T[] = []
  $effect.root(() => {
    made.push(make())
  })
  return made[0] as T
}

export class PlanningModel {
  readonly #of: () => MeetingPort
  readonly rules: Draft<'rules'>
  readonly crew: Draft<'crew'>
  readonly car: Draft<'car'>
  readonly plan: Draft<'plan'>
  /** People of the team, to be taken into this meeting with one press. */
  known = $state.raw<readonly Person[]>([])
  problem = $state<string>()
  adopting = $state(false)
  /** The entries of the last adoption. */
  adopted = $state.raw<readonly string[]>([])

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    const { name } = meeting()
    const zone = Intl.DateTimeFormat().resolvedOptions().timeZone
    this.rules = this.#draft('rules', firstRules(name, zone))
    this.crew = this.#draft('crew', FIRST_CREW)
    this.car = this.#draft('car', FIRST_CAR)
    this.plan = this.#draft('plan', FIRST_PLAN)
  }

  readonly drafts = $derived.by(() => [this.rules, this.crew, this.car, this.plan])
  readonly contradictions = $derived.by(() => contradictions(this.rules.content, this.crew.content))
  readonly loading = $derived.by(() => this.drafts.some(({ stands }) => stands === 'loading'))
  readonly stale = $derived.by(() => this.drafts.filter(({ stands }) => stands === 'stale'))
  readonly strangers = $derived.by(() => {
    const crew = this.crew.content.people
    return this.known.filter(({ id }) => !crew.some((person) => person.id === id))
  })
  readonly started = $derived.by(() => phaseOf(this.#of().state).phase !== 'beforeStart')
  /** What differs from what the meeting goes by. */
  readonly adoptable = $derived.by(() =>
    this.drafts.filter((draft) => draft.text !== this.#inForceText(draft.document)),
  )
  readonly savedWords = $derived.by(() => {
    const stands = this.drafts.map((draft) => draft.stands)
    if (stands.includes('notSaved')) return 'not saved: no server. Leave this page open'
    return stands.every((one) => one === 'saved') ? 'draft saved' : 'saving the draft'
  })

  /** Called from an effect: touches the drafts' timers only. */
  saveSoon(): void {
    for (const draft of this.drafts) draft.saveSoon(draft.text)
  }

  async addPerson(name: string): Promise<void> {
    const person = { id: v7(), name }
    this.takeIn(person)
    const reply = await addPerson(person)
    this.problem = 'failed' in reply ? reply.failed.sentence : undefined
  }

  takeIn({ id, name }: Person): void {
    this.crew.content.people.push({ id, name, duties: DUTIES.filter((duty) => duty !== 'offDuty') })
  }

  /**
   * Every draft the meeting does not go by yet, or of these those that are named: each of them stands on the ones
   * before it in the order of `drafts`, so after one that somebody else has changed none is adopted.
   */
  async adopt(as: 'correction' | 'change', only?: readonly DocumentName[]): Promise<void> {
    if (this.adopting) return
    this.adopting = true
    const entries: string[] = []
    for (const draft of this.adoptable) {
      if (only && !only.includes(draft.document)) continue
      const isSaved = await draft.save()
      if (draft.stands === 'stale') {
        if (only) break
        continue
      }
      // Without a server the version counts on; should somebody else's too, the log lists the clash.
      const version = isSaved ? draft.version : draft.version + 1
      const { document, text } = draft
      const body = adoption({ document, version, text, appliesFrom: this.#of().now, as })
      entries.push(this.#of().press('adopted.1', body))
    }
    this.adopted = entries
    this.adopting = false
  }

  async load(): Promise<void> {
    const quiet = this.drafts.filter(({ stands }) => stands === 'loading' || stands === 'saved')
    await Promise.all(quiet.map((draft) => draft.load()))
    const people = await askPeople()
    if ('failed' in people) return
    this.known = people.ok.people
    keepPeople(people.ok.people)
  }

  #draft<D extends DocumentName>(document: D, first: DocumentContent<D>): Draft<D> {
    const { state, id } = this.#of()
    const adopted = state.documents[document].at(-1)
    const content = adopted ? (adopted.content as DocumentContent<D>) : first
    return new Draft({ meeting: id, document, first: { version: adopted?.version ?? 0, content } })
  }

  #inForceText(document: DocumentName): string | undefined {
    const content = inForce(this.#of().state, document, this.#of().now)
    return content === undefined ? undefined : textOf(document, content)
  }
}
