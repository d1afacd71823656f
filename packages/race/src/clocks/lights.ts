/** The light test before a dark segment. */
import type { Said, State } from '../fold/state.ts'
import { darknessOf, type Darkness } from '../time/darkness.ts'
import { lanesOf } from '../time/lanes.ts'
import { segmentsOf, type SegmentOutlook } from '../time/programme.ts'

/** What `inspected` calls them. */
export const LIGHTS = 'Lights'

export interface LightTest {
  readonly segment: SegmentOutlook
  readonly darkness: Darkness
  /** `open` until they were tried since the last segment ended, and found in order. */
  readonly state: 'open' | 'inOrder' | 'notInOrder'
  /** The last time they were tried since then. */
  readonly tried?: Said<'inspected.1'>
}

/** Of the next segment to be run, where it is dark or partly dark and we have a lane in it; undefined otherwise. */
export function lightTest(state: State, now: number): LightTest | undefined {
  const segment = segmentsOf(state, now).find((one) => one.state === 'ahead')
  if (!segment || lanesOf(state, now).get(segment.item.id) === 'sitOut') return undefined
  const darkness = darknessOf(state, segment, now)
  if (darkness.is !== 'dark' && darkness.is !== 'partly') return undefined
  const last = state.raceControl.runs.at(-1)
  const since = last ? (last.endAt ?? Infinity) : -Infinity
  const tried = state.car.inspections
    .filter(({ at, body }) => at >= since && body.what.toLowerCase() === LIGHTS.toLowerCase())
    .at(-1)
  if (!tried) return { segment, darkness, state: 'open' }
  return { segment, darkness, state: tried.body.inOrder ? 'inOrder' : 'notInOrder', tried }
}
