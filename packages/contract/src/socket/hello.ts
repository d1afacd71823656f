/** Screen → server, first on every connection: which meeting, and how far this screen's copy of the log goes. */
import * as z from 'zod/mini'
import { roleSchema, timeMs, uuidV7 } from '@pitlamp/race'
import { meetingSchema } from '../http/meeting.ts'
import { clockStandingSchema } from './clock.ts'
import { wallStandingSchema } from './wall.ts'

export const helloSchema = z.strictObject({
  protocol: z.int(),
  meeting: uuidV7,
  after: z.int().check(z.minimum(0)),
  /** What this screen reckons the server's time to be, from before the connection was lost. */
  reckoned: z.optional(z.strictObject({ serverMs: timeMs, boundMs: z.int(), epoch: z.int() })),
})
export type Hello = z.infer<typeof helloSchema>

export const welcomeSchema = z.object({
  device: z.object({
    id: uuidV7,
    name: z.string(),
    /** In this meeting: a crew device that has the wall is the wall. */
    role: roleSchema,
    wall: z.optional(wallStandingSchema),
  }),
  meeting: meetingSchema,
  clock: clockStandingSchema,
  /** What the devices are called that wrote into this meeting, also those that were never seen together. */
  writers: z.optional(z.array(z.object({ device: uuidV7, name: z.string() }))),
})
export type Welcome = z.infer<typeof welcomeSchema>
