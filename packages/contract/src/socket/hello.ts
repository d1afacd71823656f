/** Screen → server, first on every connection: which meeting, and how far this screen's copy of the log goes. */
import * as z from 'zod/mini'
import { roleSchema, timeMs, uuidV7 } from '@pitlamp/race'
import { meetingSchema } from '../http/meeting.ts'
import { clockStandingSchema } from './clock.ts'

export const helloSchema = z.strictObject({
  protocol: z.int(),
  meeting: uuidV7,
  after: z.int().check(z.minimum(0)),
  /** What this screen reckons the server's time to be, from before the connection was lost. */
  reckoned: z.optional(z.strictObject({ serverMs: timeMs, boundMs: z.int(), epoch: z.int() })),
})
export type Hello = z.infer<typeof helloSchema>

export const welcomeSchema = z.object({
  device: z.object({ id: uuidV7, name: z.string(), role: roleSchema }),
  meeting: meetingSchema,
  clock: clockStandingSchema,
})
export type Welcome = z.infer<typeof welcomeSchema>
