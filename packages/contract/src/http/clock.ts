/** The captain sets the server's clock: one press, for the epoch that was shown. */
import * as z from 'zod/mini'

export const settleClockSchema = z.strictObject({
  epoch: z.int(),
  /** What to move the server's clock by: the devices' median, or 0 to vouch for it as it is. */
  shiftMs: z.number(),
})
export type SettleClock = z.infer<typeof settleClockSchema>
