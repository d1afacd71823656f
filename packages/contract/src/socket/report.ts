/** Screen → server, when it changes: how this device stands. Everybody in the meeting is told with the presence. */
import * as z from 'zod/mini'
import { timeMs, uuidV7 } from '@pitlamp/race'

/** What somebody found who checked the device; what was not tried is absent. */
export const deviceCheckSchema = z.strictObject({
  sound: z.optional(z.enum(['heard', 'notHeard'])),
  speech: z.optional(z.enum(['heard', 'notHeard', 'unavailable'])),
  vibration: z.optional(z.enum(['felt', 'notFelt', 'unavailable'])),
  /** Whether the screen can be kept lit; browsers do it over HTTPS and on localhost only. */
  awake: z.optional(z.enum(['held', 'plainHttp', 'refused', 'unavailable'])),
  charger: z.optional(z.enum(['plugged', 'notPlugged'])),
  /** Meeting time of the last answer. */
  at: timeMs,
})
export type DeviceCheck = z.infer<typeof deviceCheckSchema>

export const deviceReportSchema = z.strictObject({
  /** Who holds it, as they said: a claim, never a permission. */
  person: z.optional(uuidV7),
  clock: z.strictObject({
    standing: z.enum(['set', 'roughly', 'notSure']),
    boundMs: z.int().check(z.minimum(0)),
  }),
  /** Where the device can say. */
  battery: z.optional(
    z.strictObject({
      charging: z.boolean(),
      percent: z.int().check(z.minimum(0), z.maximum(100)),
    }),
  ),
  check: z.optional(deviceCheckSchema),
})
export type DeviceReport = z.infer<typeof deviceReportSchema>
