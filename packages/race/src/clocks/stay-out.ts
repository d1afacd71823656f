/** A driver stays out: what the rules make of it, for how long they still allow it, and whom it moves. */
import type { Finding } from '../checks/findings.ts'
import { adoptionInForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { atOf, clockAt } from '../time/clock-map.ts'
import { furthestMs, movedHandovers } from '../time/plan-in-force.ts'
import { currentRun } from '../time/programme.ts'
import { brokenAhead, newlyBroken } from './broken-ahead.ts'
import { stintClock } from './stint-clock.ts'
import { whomItMoves, withStayOut, type MovedSpan } from './whom-it-moves.ts'

const MINUTE_MS = 60_000
/** What a driver is asked for: common practice, no source. */
const CHOICES_MS = [300_000, 600_000]
const AT_MOST_MS = 3_600_000
const STEP_MS = 300_000

export interface StayOut {
  readonly person: string
  /** What to record, with a choice's `byMs`: the place of the handover in the version that was adopted. */
  readonly body: { readonly segment: string; readonly boundaryMs: number }
  /** Where it is now, stay-outs so far included: on the race clock, and about when. */
  readonly endsMs: number
  readonly endsAt: number
  /** Five minutes and ten. */
  readonly choices: readonly StayOutChoice[]
  /** Whole minutes, at most an hour. */
  readonly allowedMs: number
  /** What one minute more would break; empty where the next handover, the segment's end or the hour stops it. */
  readonly stoppedBy: readonly Finding[]
}

export interface StayOutChoice {
  readonly byMs: number
  /** Less where the next handover or the segment's end comes first. */
  readonly movesMs: number
  /** It breaks nothing that is not broken as it is. */
  readonly allowed: boolean
  readonly breaks: readonly Finding[]
  readonly moves: readonly MovedSpan[]
}

/**
 * Of whoever drives now. What was raced, continued by the plan, is judged by the rules in force before and after.
 * Undefined where nobody drives, or no handover of the plan ends this stint within its segment.
 *
 * The longest stay is looked for in steps of five minutes, and by the minute within the first that breaks something
 * new. Every step judges the whole race: ask when somebody wants to know, not with every tick.
 */
export function stayOut(state: State, now: number): StayOut | undefined {
  const handover = handoverAhead(state, now)
  if (!handover) return undefined
  const { body, roomMs, ...ends } = handover
  const before = brokenAhead(state, now)
  const judged = new Map<number, readonly Finding[]>()
  const breaksBy = (byMs: number): readonly Finding[] => {
    const moved = Math.min(byMs, roomMs)
    const breaks =
      judged.get(moved) ??
      newlyBroken(before, brokenAhead(withStayOut(state, now, { ...body, byMs: moved }), now))
    judged.set(moved, breaks)
    return breaks
  }
  const choices = CHOICES_MS.map((byMs): StayOutChoice => {
    const breaks = breaksBy(byMs)
    const moves = whomItMoves(state, now, { ...body, byMs })
    return { byMs, movesMs: Math.min(byMs, roomMs), allowed: breaks.length === 0, breaks, moves }
  })
  return { ...ends, body, choices, ...longest(Math.min(AT_MOST_MS, roomMs), breaksBy) }
}

function longest(
  mostMs: number,
  breaksBy: (byMs: number) => readonly Finding[],
): Pick<StayOut, 'allowedMs' | 'stoppedBy'> {
  let allowedMs = 0
  while (allowedMs + STEP_MS <= mostMs && breaksBy(allowedMs + STEP_MS).length === 0) {
    allowedMs += STEP_MS
  }
  while (allowedMs + MINUTE_MS <= mostMs) {
    const stoppedBy = breaksBy(allowedMs + MINUTE_MS)
    if (stoppedBy.length > 0) return { allowedMs, stoppedBy }
    allowedMs += MINUTE_MS
  }
  return { allowedMs, stoppedBy: [] }
}

interface HandoverAhead extends Pick<StayOut, 'person' | 'body' | 'endsMs' | 'endsAt'> {
  readonly roomMs: number
}

/** A handover that was moved onto the next one of the plan goes on as that one. */
function handoverAhead(state: State, now: number): HandoverAhead | undefined {
  const run = currentRun(state)
  const stint = stintClock(state, now)
  const adoption = adoptionInForce(state, 'plan', now)
  if (!run || !stint || !adoption || stint.toGoMs === undefined) return undefined
  const endsMs = clockAt(run, now).clockMs + stint.toGoMs
  const { segment } = run
  const moved = movedHandovers(state, adoption)
    .filter((one) => one.segment === segment && one.toMs === endsMs)
    .map((one) => one.boundaryMs)
  for (const boundaryMs of [endsMs, ...moved]) {
    const lastMs = furthestMs(state, adoption.content, { segment, boundaryMs })
    if (lastMs === undefined || lastMs <= endsMs) continue
    const body = { segment, boundaryMs }
    const roomMs = lastMs - endsMs
    return { person: stint.person, body, endsMs, endsAt: atOf(run, endsMs, now), roomMs }
  }
  return undefined
}
