/** A log written by hand: every press goes through `readEntry`, as on a screen. */
import type { RecordedEntry, Role } from '../entry/envelope.ts'
import type { Body, Kind } from '../entry/kinds/index.ts'
import { readEntry, type LogEntry } from '../entry/read.ts'
import { fold } from '../fold/fold.ts'
import type { State } from '../fold/state.ts'
import { DEVICES, id } from './ids.ts'

/** Meeting time at which the hand-written meetings go green: 2027-01-16T08:00:00Z. */
export const GREEN = 1_800_086_400_000

export interface How {
  readonly device?: string
  readonly role?: Role
  readonly recordedAt?: number
  readonly atBoundMs?: number
  /** A press that is only kept on its device. */
  readonly pending?: true
}

interface Log {
  readonly recorded: RecordedEntry[]
  readonly kept: LogEntry[]
  readonly numbers: Map<string, number>
}

export class Pressing {
  private readonly log: Log
  private readonly how: How

  constructor(log: Log = { recorded: [], kept: [], numbers: new Map() }, how: How = {}) {
    this.log = log
    this.how = how
  }

  /** The same log, pressed by another device or in another way. */
  by(how: How): Pressing {
    return new Pressing(this.log, how)
  }

  /** `at` in meeting time. Answers the entry's id. */
  press<K extends Kind>(at: number, kind: K, body: Body<K>): string {
    return this.pressAnything(at, kind, body)
  }

  /** What this build may not know, or not accept. */
  pressAnything(at: number, kind: string, body: unknown): string {
    const { recorded, kept, numbers } = this.log
    const { device = DEVICES.wall, atBoundMs = 0, recordedAt = at, pending } = this.how
    const n = (numbers.get(device) ?? 0) + 1
    numbers.set(device, n)
    const place = recorded.length + kept.length + 1
    const role = this.how.role ?? (device === DEVICES.phone ? 'crew' : 'pitWall')
    const text = typeof body === 'string' ? body : JSON.stringify(body)
    const made = { v: 1 as const, id: id(place), device, n, at, atBoundMs, epoch: 1, kind }
    const entry = { ...made, body: text }
    if (pending) kept.push({ ...readEntry(entry), role })
    else recorded.push({ ...entry, seq: place, recordedAt, role })
    return entry.id
  }

  get recorded(): readonly RecordedEntry[] {
    return this.log.recorded
  }

  get entries(): readonly LogEntry[] {
    return [...this.log.recorded.map(readEntry), ...this.log.kept]
  }

  state(): State {
    return fold(this.entries)
  }
}

/** Kinds of the problems a state lists, in order. */
export function problemKinds(state: State): readonly string[] {
  return state.problems.map((problem) => problem.kind)
}
