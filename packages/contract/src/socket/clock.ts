/** Server → screen: how the server's clock stands. Sent in the welcome and whenever it changes. */
import * as z from 'zod/mini'
import { timeMs } from '@pitlamp/race'

export const clockStandingSchema = z.object({
  /** Rises by one each time the captain sets the server's clock; samples of an older epoch are worthless. */
  epoch: z.int(),
  /** Present while the clock is in doubt. */
  doubt: z.optional(
    z.object({
      why: z.enum(['behindItsMark', 'devicesDiffer']),
      /** What the devices that were here before reckon, as shift of the server's clock: their median. */
      offeredShiftMs: z.optional(z.number()),
      devices: z.int(),
    }),
  ),
  serverMs: timeMs,
})
export type ClockStanding = z.infer<typeof clockStandingSchema>
