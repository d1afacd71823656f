import * as z from 'zod/mini'
import { count } from '../entry/scalars.ts'
import { orNotKnown, rule } from './shape.ts'

/** Whether hands may work on the car in one phase, and what it costs where it is paid for in laps. */
export const workAllowed = rule(
  'workAllowed',
  z.strictObject({
    during: z.enum(['green', 'trackCall', 'redFlag', 'laneChange', 'break', 'parcFerme']),
    allowed: orNotKnown(z.boolean()),
    costLaps: z.optional(count),
  }),
)
