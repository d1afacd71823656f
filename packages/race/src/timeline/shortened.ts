/** By how much race control made the race shorter than the programme has it. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { segmentsOf, type SegmentOutlook } from '../time/programme.ts'

export interface Shortened {
  /** Race clock of all segments by the rules in force, and what is left of it. */
  readonly fromMs: number
  readonly toMs: number
}

/**
 * A segment made shorter counts its new length, an abandoned one as far as its race clock came. Undefined where the
 * race is as long as it was meant to be, and where a segment is counted in laps.
 */
export function shortened(state: State, now: number): Shortened | undefined {
  if (!inForce(state, 'rules', now) || state.raceControl.segmentChanges.length === 0)
    return undefined
  let [fromMs, toMs] = [0, 0]
  for (const outlook of segmentsOf(state, now)) {
    const { length } = outlook.item
    const leftMs = leftOf(outlook)
    if (length.by === 'laps' || leftMs === undefined) return undefined
    fromMs += length.lengthMs
    toMs += leftMs
  }
  return toMs < fromMs ? { fromMs, toMs } : undefined
}

function leftOf({ state, run, lengthMs }: SegmentOutlook): number | undefined {
  if (state !== 'abandoned') return lengthMs
  return run?.endAt === undefined ? 0 : clockAt(run, run.endAt).clockMs
}
