import type { State } from '../fold/state.ts'
import { clockAt } from './clock-map.ts'
import { segmentsOf, type SegmentOutlook } from './programme.ts'

/**
 * Whether what hangs on a segment's race clock stands still, so that its due time slides: its clock holds; or
 * it is ahead and begins the later the longer one waits, for its own green or for a segment that holds.
 */
export function standsStill(state: State, outlook: SegmentOutlook, now: number): boolean {
  if (outlook.run) return clockAt(outlook.run, now).rate === 0
  const soon = segmentsOf(state, now + 1).find((one) => one.item.id === outlook.item.id)
  return soon !== undefined && soon.startsAt > outlook.startsAt
}
