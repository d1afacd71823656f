/** Server → screen: news of the log, sent only when `from` is the socket's cursor. A screen that stands elsewhere fetches. */
import * as z from 'zod/mini'
import { recordedEntrySchema, uuidV7 } from '@pitlamp/race'

export const pushSchema = z.object({
  meeting: uuidV7,
  /** The cursor before these entries, and after them. */
  from: z.int(),
  to: z.int(),
  entries: z.array(recordedEntrySchema),
})
export type Push = z.infer<typeof pushSchema>
