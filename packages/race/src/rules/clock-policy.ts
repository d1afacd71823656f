import * as z from 'zod/mini'
import { orNotKnown, rule } from './shape.ts'

export const CLOCKS = ['segment', 'stopMinimum', 'driving', 'repairLimit'] as const
export type Clock = (typeof CLOCKS)[number]
export const INTERRUPTIONS = ['trackCall', 'redFlag', 'laneChange'] as const
export type Interruption = (typeof INTERRUPTIONS)[number]
export type ClockPolicy = 'runs' | 'holds'

/** Whether one clock runs on or holds under one kind of interruption. */
export const clockPolicy = rule(
  'clockPolicy',
  z.strictObject({
    clock: z.enum(CLOCKS),
    under: z.enum(INTERRUPTIONS),
    does: orNotKnown(z.enum(['runs', 'holds'])),
  }),
)

/**
 * What is assumed while the rule is not known: for each clock the reading that cannot cost a penalty
 * (a later GO, a driving limit and a repair limit that come sooner). The segment clock is taken to hold,
 * as where power and timing stop together: common practice, no source.
 */
export const ASSUMED_POLICY: Readonly<Record<Clock, ClockPolicy>> = {
  segment: 'holds',
  stopMinimum: 'holds',
  driving: 'runs',
  repairLimit: 'runs',
}
