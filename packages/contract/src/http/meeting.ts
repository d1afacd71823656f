/** A meeting as it is listed and opened: one team's part in an event. */
import * as z from 'zod/mini'
import { timeMs, uuidV7 } from '@pitlamp/race'

/** Meeting time from server time: anchorMeetingMs + (server − anchorServerMs) × rate. Rate 1 unless fictional. */
export const meetingClockSchema = z.object({
  anchorServerMs: timeMs,
  anchorMeetingMs: timeMs,
  rate: z.number(),
})
export type MeetingClock = z.infer<typeof meetingClockSchema>

export const meetingSchema = z.object({
  id: uuidV7,
  name: z.string(),
  fictional: z.boolean(),
  clock: meetingClockSchema,
  createdAt: timeMs,
  lastSeq: z.int(),
})
export type Meeting = z.infer<typeof meetingSchema>

export const newMeetingSchema = z.strictObject({
  /** Made by whoever acts, so that asking twice makes one meeting. */
  id: uuidV7,
  name: z.string().check(z.trim(), z.minLength(1), z.maxLength(80)),
  /** A meeting that nobody holds: the demo, a soak run. Its clock may run faster, and from another moment than now. */
  fictional: z.optional(
    z.strictObject({
      /** Meeting seconds in a real second. */
      rate: z.number().check(z.minimum(1), z.maximum(1000)),
      startsAtMs: z.optional(timeMs),
    }),
  ),
})
export type NewMeeting = z.infer<typeof newMeetingSchema>

export const meetingsSchema = z.object({ meetings: z.array(meetingSchema) })
