/** A page of the log: catch-up and first load. */
import * as z from 'zod/mini'
import { recordedEntrySchema } from '@pitlamp/race'

export const entriesPageSchema = z.object({
  from: z.int(),
  to: z.int(),
  /** The last sequence number the meeting has; the page is the last one when `to` equals it. */
  last: z.int(),
  entries: z.array(recordedEntrySchema),
})
export type EntriesPage = z.infer<typeof entriesPageSchema>
