import * as z from 'zod/mini'
import { clockMs, lineId } from '../entry/scalars.ts'
import { orNotKnown, rule } from './shape.ts'

/** When mandatory stops may be taken, on each segment's race clock. */
export const stopWindows = rule(
  'stopWindows',
  z.strictObject({
    windows: orNotKnown(
      z
        .array(z.strictObject({ id: lineId, segment: lineId, fromMs: clockMs, toMs: clockMs }))
        .check(z.maxLength(100)),
    ),
  }),
)
