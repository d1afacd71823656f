/** The three versions of the plan: before the draw, after it, and when one of the marshals has to leave. */
import type { Duty, Plan } from '@pitlamp/race'
import { EDDA, FALK, GWEN, HALE, SEGMENT_MS } from './documents.ts'

type Row = readonly [segment: string, ...duties: (readonly [Duty, person: string, post?: string])[]]

/** Drivers in turn, and the same marshal all day: nobody knows yet which segments are sat out. */
export const beforeDraw = planOf(
  [EDDA, FALK, GWEN, EDDA, FALK, GWEN, EDDA, FALK].map((driver, place): Row => {
    return [`s${place + 1}`, ['controller', driver], ['post', HALE, '1']]
  }),
)

/** Two segments each, and two marshals in the third and the seventh, which are sat out. */
const ROWS: readonly Row[] = [
  ['s1', ['controller', EDDA], ['post', HALE, '1'], ['wall', GWEN]],
  ['s2', ['controller', FALK], ['post', HALE, '1'], ['wall', EDDA]],
  ['s3', ['post', EDDA, '1'], ['post', HALE, '2']],
  ['s4', ['controller', GWEN], ['post', FALK, '1'], ['wall', EDDA]],
  ['s5', ['controller', EDDA], ['post', GWEN, '1'], ['wall', FALK]],
  ['s6', ['controller', FALK], ['post', EDDA, '1'], ['wall', GWEN]],
  ['s7', ['post', EDDA, '1'], ['post', FALK, '2']],
  ['s8', ['controller', GWEN], ['post', HALE, '1'], ['wall', EDDA]],
]
export const afterDraw = planOf(ROWS)

/** Without Hale, and the last segment as short as it is by then. */
export const withoutHale = planOf(
  [...ROWS.slice(0, 7), ['s8', ['controller', GWEN], ['post', FALK, '1'], ['wall', EDDA]]],
  { s8: 600_000 },
)

function planOf(rows: readonly Row[], lengths: Readonly<Record<string, number>> = {}): Plan {
  return {
    spans: rows.flatMap(([segment, ...duties]) =>
      duties.map(([duty, person, post]) => ({
        ...{ id: `${segment}-${duty}-${post ?? ''}`, person, duty, segment },
        ...{ fromMs: 0, toMs: lengths[segment] ?? SEGMENT_MS },
        ...(post === undefined ? {} : { post }),
      })),
    ),
    stops: [],
    captain: { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false },
  }
}
