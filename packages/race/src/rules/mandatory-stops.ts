import * as z from 'zod/mini'
import { count, durationMs } from '../entry/scalars.ts'
import { orNotKnown, rule } from './shape.ts'

/** How many stops the organiser demands. */
export const mandatoryStops = rule(
  'mandatoryStops',
  z.strictObject({ count: orNotKnown(count), per: z.enum(['segment', 'race']) }),
)

/** How long a mandatory stop lasts at least, and between which two of its four moments. */
export const stopMinimum = rule(
  'stopMinimum',
  z.strictObject({
    minimumMs: orNotKnown(durationMs),
    from: orNotKnown(z.enum(['pitEntry', 'stopped'])),
    to: orNotKnown(z.enum(['leaving', 'pitExit'])),
  }),
)
