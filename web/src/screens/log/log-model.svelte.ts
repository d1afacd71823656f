/** The whole log, newest first, and setting right what was pressed wrongly. Works without the server. */
import type { Device } from '@pitlamp/contract'
import { inForce, may, type LogLine, type ReadEntry } from '@pitlamp/race'
import { askDevices } from '../../api/team.ts'
import type { MeetingPort } from '../../meeting/port.ts'
import { crewNames } from '../../parts/crew.ts'
import { entryWords } from '../../parts/entry-words.ts'
import { clockTime } from '../../parts/time.ts'
import { detailsOf } from './details.ts'
import { byId, segmentNames } from './by-id.ts'
import { familyOf, type Family } from './families.ts'
import { moved, RESTORED, splitOff } from './set-right.ts'

export type Filter = 'all' | Family
export interface Row {
  readonly id: string
  readonly time: string
  readonly words: string
  readonly details: string
  readonly who: string
  readonly standing: LogLine['standing']
  readonly standingWords: string
  readonly saved: string
}

const SAVED_WORDS = {
  onlyOnThisPage: 'held by this page only',
  keptOnThisDevice: 'kept on this device',
  saved: 'saved',
  refused: 'not taken',
} as const

export class LogModel {
  readonly #of: () => MeetingPort
  filter = $state<Filter>('all')
  chosen = $state<string>()
  /** Devices that are not here just now; a captain's device can ask what they are called. */
  #away = $state.raw<readonly Device[]>([])

  constructor(meeting: () => MeetingPort) {
    this.#of = meeting
    void this.#askWhoIsAway()
  }

  readonly #log = $derived.by(() => this.#of().state.record.log)
  readonly #byId = $derived.by(() => byId(this.#log))
  /** Documents change rarely: read for the last entry, not for every tick. */
  readonly crew = $derived.by(() => crewNames(this.#of().state, this.#lastAt))
  readonly #lastAt = $derived.by(() => this.#log.at(-1)?.at ?? 0)
  readonly #segments = $derived.by(() => {
    return segmentNames(inForce(this.#of().state, 'rules', this.#lastAt))
  })
  readonly lines = $derived.by(() => {
    const { filter } = this
    const lines =
      filter === 'all'
        ? this.#log
        : this.#log.filter(({ entry }) => familyOf(entry.kind) === filter)
    return [...lines].reverse()
  })
  readonly problems = $derived.by(() => this.#of().state.problems)
  readonly refused = $derived.by(() => this.#of().refused)
  readonly chosenLine = $derived.by(() =>
    this.chosen === undefined ? undefined : this.#byId.get(this.chosen),
  )
  readonly mayCorrect = $derived.by(() => {
    const line = this.chosenLine
    if (!line || line.standing === 'correction') return false
    const own = line.entry.device === this.#of().device
    return may(this.#of().role, { do: 'correct', own })
  })

  row(line: LogLine): Row {
    const { entry, at } = line
    const read = line.corrected ?? entry
    return {
      id: entry.id,
      time: this.timeOf(at),
      words: this.#words(read),
      details: 'unread' in read ? (read.why ?? '') : this.#details(read),
      who: this.#who(line),
      standing: line.standing,
      standingWords: this.#standingWords(line),
      saved: entry.seq === undefined ? SAVED_WORDS[this.#of().saved(entry.id)] : 'saved',
    }
  }

  timeOf(at: number): string {
    return clockTime(at, this.crew.timeZone, { seconds: true, dayRelativeTo: this.#of().now })
  }

  move(line: LogLine, at: number, reason: string): void {
    this.#of().correct(line.entry.id, moved(line, at), reason)
  }

  void(line: LogLine, reason: string): void {
    this.#of().correct(line.entry.id, { what: 'void' }, reason)
  }

  restore(line: LogLine, reason: string): void {
    this.#of().correct(line.entry.id, RESTORED, reason)
  }

  splitOff(line: LogLine, reason: string): void {
    this.#of().correct(line.entry.id, splitOff(line), reason)
  }

  #words(read: LogLine['entry']): string {
    if (!('unread' in read)) return entryWords(read, this.crew.nameOf)
    return read.unread === 'unknownKind'
      ? `Something this version does not know (${read.kind})`
      : `Something that cannot be read (${read.kind})`
  }

  #details(read: ReadEntry): string {
    return detailsOf(read, {
      nameOf: this.crew.nameOf,
      segmentOf: (segment) => this.#segments.get(segment) ?? segment,
      timeOf: (at) => this.timeOf(at),
      entryOf: (id) => this.#entryWords(id),
    })
  }

  #entryWords(id: string): string {
    const line = this.#byId.get(id)
    return line
      ? `${this.#words(line.corrected ?? line.entry)}, ${this.timeOf(line.at)}`
      : 'an entry not here'
  }

  #who({ entry }: LogLine): string {
    const { device, screens, deviceName } = this.#of()
    const name =
      entry.device === device
        ? 'this device'
        : (deviceName?.(entry.device) ??
          screens.find((screen) => screen.device === entry.device)?.name ??
          this.#away.find(({ id }) => id === entry.device)?.name ??
          `device ${entry.device.slice(-4)}`)
    return entry.person === undefined ? name : `${this.crew.nameOf(entry.person)}, ${name}`
  }

  async #askWhoIsAway(): Promise<void> {
    if (!may(this.#of().role, { do: 'manageDevices' })) return
    const reply = await askDevices()
    if ('ok' in reply) this.#away = reply.ok.devices
  }

  #standingWords({ standing, reason, witnessOf, entry, at }: LogLine): string {
    const because = reason === undefined || reason === '' ? '' : `: ${reason}`
    switch (standing) {
      case 'holds':
      case 'correction':
        return ''
      case 'corrected':
        return at === entry.at
          ? `set right${because}`
          : `pressed at ${this.timeOf(entry.at)}${because}`
      case 'voided':
        return `void${because}`
      case 'secondWitness':
        return `second witness of ${this.#entryWords(witnessOf ?? '')}`
      case 'unread':
        return 'kept as it is'
    }
  }
}
