/** What the meeting is in the middle of, as far as the log says. */
import type { ProgrammeItem } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { State, StopState } from '../fold/state.ts'
import { currentRun, placeOf, segmentsOf, type SegmentPlace } from '../time/programme.ts'
import { openCause } from './segment-clock.ts'

export interface Phase {
  readonly phase: 'beforeStart' | 'green' | 'powerOff' | 'between' | 'finished'
  /** Why the power is off. */
  readonly cause?: 'trackCall' | 'redFlag'
  /** What the programme has after the segment that is over. */
  readonly between?: 'break' | 'laneChange'
  /** The running segment, or the last one that ran. */
  readonly segment?: SegmentPlace
  /** The next segment to be run. */
  readonly next?: SegmentPlace
  /** The visit that is going on. */
  readonly carIn?: StopState
}

const LATEST = Number.MAX_SAFE_INTEGER

/** `now` chooses the rules in force; without it the last adopted are read. */
export function phaseOf(state: State, now = LATEST): Phase {
  const run = currentRun(state)
  const last = run ?? state.raceControl.runs.at(-1)
  const segment = last && placeOf(state, last, now)
  const next = segmentsOf(state, now).find((outlook) => outlook.state === 'ahead')
  const carIn = stopNow(state)
  const around = {
    ...(segment ? { segment } : {}),
    ...(next ? { next: { item: next.item, index: next.index, of: next.of } } : {}),
    ...(carIn ? { carIn } : {}),
  }
  if (!segment) return { phase: 'beforeStart', ...around }
  const cause = openCause(state)
  if (run) return cause ? { phase: 'powerOff', cause, ...around } : { phase: 'green', ...around }
  if (!next) return { phase: 'finished', ...around }
  const programme = inForce(state, 'rules', now)?.programme ?? []
  return { phase: 'between', between: betweenKind(programme, segment), ...around }
}

/** The visit that has neither a leaving nor an exit. */
export function stopNow(state: State): StopState | undefined {
  const last = state.car.stops.at(-1)
  return last && !last.moments.leaving && !last.moments.pitExit ? last : undefined
}

/** What the programme has right after a segment. */
export function betweenKind(
  programme: readonly ProgrammeItem[],
  { item }: SegmentPlace,
): 'break' | 'laneChange' {
  const line = programme.findIndex((other) => other.id === item.id)
  const after = programme[line + 1]
  return line >= 0 && after?.kind === 'laneChange' ? 'laneChange' : 'break'
}
