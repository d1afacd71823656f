/** What an entry changed for one person: told to that person's phone, and to nobody else. */
import type { State } from '../fold/state.ts'
import type { SegmentLane } from '../time/lanes.ts'
import { dutiesAhead, type DutyAhead } from './duties-ahead.ts'
import { changeInWords } from './change-in-words.ts'

/** A state, and the meeting time it is looked at. */
export interface Seen {
  readonly state: State
  readonly now: number
}

export interface ChangeFor {
  /**
   * `moved`: later or earlier, as long as before. `lengthened`, `shortened`: its length changed, whatever else did.
   * `post`, `lane`: at the same time elsewhere. A change of time that also changes the place is said once, with both.
   */
  readonly what: 'added' | 'dropped' | 'moved' | 'lengthened' | 'shortened' | 'post' | 'lane'
  readonly before?: DutyAhead
  readonly after?: DutyAhead
  /** By how much it begins later; below 0 earlier. */
  readonly laterMs: number
  /** The person is not there for this much of it: somebody else is needed. */
  readonly awayMs: number
  /** A short plain sentence without a time of the clock in it. */
  readonly sentence: string
}

/** Times ahead are about: less than this is no change. Common practice, no source. */
const NO_CHANGE_MS = 30_000

/**
 * In the order in which they come. Duties are the same where the plan's line and the duty are. Both states are best
 * looked at with the same `now`; what is over by then is left out of both.
 */
export function changesFor(before: Seen, after: Seen, person: string): readonly ChangeFor[] {
  const was = dutiesAhead(before.state, person, before.now)
  const is = dutiesAhead(after.state, person, after.now)
  const dropped = was
    .filter((one) => !is.some((other) => isSame(one, other)))
    .map((one): ChangeFor => change(after, { what: 'dropped', before: one }))
  const others = is.flatMap((two): readonly ChangeFor[] => {
    const one = was.find((other) => isSame(other, two))
    if (!one) return [change(after, { what: 'added', after: two })]
    const what = whatChanged(one, two)
    return what ? [change(after, { what, before: one, after: two })] : []
  })
  const startOf = (one: ChangeFor) => one.after?.startsAt ?? one.before?.startsAt ?? 0
  return [...dropped, ...others].sort((a, b) => startOf(a) - startOf(b))
}

function isSame({ span: a }: DutyAhead, { span: b }: DutyAhead): boolean {
  return a.id === b.id && a.segment === b.segment && a.duty === b.duty
}

function whatChanged(before: DutyAhead, after: DutyAhead): ChangeFor['what'] | undefined {
  const longerMs = lengthOf(after) - lengthOf(before)
  if (longerMs >= NO_CHANGE_MS) return 'lengthened'
  if (longerMs <= -NO_CHANGE_MS) return 'shortened'
  if (Math.abs(after.startsAt - before.startsAt) >= NO_CHANGE_MS) return 'moved'
  const { duty, post } = after.span
  if (duty === 'post' && post !== undefined && post !== before.span.post) return 'post'
  return duty === 'controller' && !isSameLane(before.lane, after.lane) ? 'lane' : undefined
}

function lengthOf({ startsAt, endsAt }: DutyAhead): number {
  return endsAt - startsAt
}

function isSameLane(a: SegmentLane | undefined, b: SegmentLane | undefined): boolean {
  if (typeof a !== 'object' || typeof b !== 'object') return a === b
  return a.lane === b.lane && a.track === b.track
}

type Found = Pick<ChangeFor, 'what' | 'before' | 'after'>

function change({ state }: Seen, found: Found): ChangeFor {
  const { before, after } = found
  const laterMs = before && after ? after.startsAt - before.startsAt : 0
  const of = { ...found, laterMs, awayMs: after?.awayMs ?? 0 }
  return { ...of, sentence: changeInWords(state, of) }
}
