/** What changed for whoever holds this phone, until they have heard it; this device remembers what they heard. */
import type { MeetingPort } from '../meeting/port.ts'
import { sound } from '../meeting/sound.svelte.ts'
import { crewNames } from './crew.ts'
import { clockTime } from './time.ts'
import { toldTo, unheardOf, without, type Unheard } from './told.ts'

const TEN_MS = 10_000
const LINES = 3
/** What has sounded on this page. */
const sounded: string[] = []

export class ToldModel {
  readonly #of: () => MeetingPort
  readonly #person: () => string
  #known = $state.raw<Unheard>({ since: Infinity, heard: [] })

  constructor(meeting: () => MeetingPort, person: () => string) {
    this.#of = meeting
    this.#person = person
    const known = read(this.#key) ?? { since: meeting().now, heard: [] }
    this.#keep(known)
  }

  get #key(): string {
    return `pitlamp.heard.${this.#of().id}.${this.#person()}`
  }

  readonly #now = $derived.by(() => Math.floor(this.#of().now / TEN_MS) * TEN_MS)
  readonly #unheard = $derived.by(() => unheardOf(this.#of().state, this.#known))
  readonly #before = $derived.by(() =>
    this.#unheard.length === 0 ? undefined : without(this.#of().state, this.#unheard),
  )
  readonly #changes = $derived.by(() =>
    this.#before
      ? toldTo(this.#person(), {
          ...{ before: this.#before, after: this.#of().state, now: this.#now },
        })
      : [],
  )
  readonly lines = $derived.by(() => {
    const { timeZone } = crewNames(this.#of().state, this.#now)
    return this.#changes.slice(0, LINES).map(({ sentence, after }) => ({
      sentence,
      when:
        after && `now about ${clockTime(after.startsAt, timeZone, { dayRelativeTo: this.#now })}`,
    }))
  })
  readonly more = $derived.by(() => this.#changes.length - this.lines.length)

  /** Called from an effect: sounds what is new, as a call of change, and lets go of what concerns others. */
  readonly attend = (): void => {
    if (this.#unheard.length === 0) return
    if (this.#changes.length === 0) {
      this.heard()
      return
    }
    const about = this.#unheard.join(' ')
    if (sounded.includes(about)) return
    sounded.push(about)
    sound.sound('soon')
    const more = this.more > 0 ? ` And ${this.more} more changes.` : ''
    sound.say(`${this.lines.map(({ sentence }) => sentence).join(' ')}${more}`)
  }

  readonly heard = (): void => {
    const { since, heard } = this.#known
    this.#keep({ since, heard: [...heard, ...this.#unheard] })
  }

  #keep(known: Unheard): void {
    this.#known = known
    try {
      const kept = { since: known.since, heard: known.heard }
      localStorage.setItem(this.#key, JSON.stringify(kept))
    } catch {
      // Then it is told again after the page was left.
    }
  }
}

function read(key: string): Unheard | undefined {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? 'null') as Partial<
      Record<string, unknown>
    > | null
    const { since, heard } = kept ?? {}
    if (typeof since !== 'number' || !Array.isArray(heard)) return undefined
    return { since, heard: heard.filter((one) => typeof one === 'string') }
  } catch {
    return undefined
  }
}
