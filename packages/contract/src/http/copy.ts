/** What became of a copy that was brought in. */
import * as z from 'zod/mini'
import { uuidV7 } from '@pitlamp/race'
import { refusalSchema } from '../refusal.ts'
import { meetingSchema } from './meeting.ts'

export const broughtInSchema = z.object({
  meeting: meetingSchema,
  /** Entries that were new here: those a server had recorded before, and those that were on a device only. */
  recorded: z.int(),
  unsent: z.int(),
  /** Entries that were here already, the same to the byte. */
  already: z.int(),
  /** Entries that were not taken, by id. */
  left: z.array(
    z.object({ entry: uuidV7, refusal: refusalSchema, detail: z.optional(z.string()) }),
  ),
  /** How far this server's clock is behind the moment up to which the copy goes, where that is over 2 s. */
  behindMs: z.optional(z.int()),
})
export type BroughtIn = z.infer<typeof broughtInSchema>
