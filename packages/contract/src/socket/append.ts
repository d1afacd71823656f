/** Screen → server: entries of its outbox. Each is answered for itself; a bad one refuses itself alone. */
import * as z from 'zod/mini'
import { roleSchema, timeMs, uuidV7 } from '@pitlamp/race'
import { refusalSchema } from '../refusal.ts'

/** The entries themselves are checked one by one, so that one bad envelope does not take the batch down. */
export const appendSchema = z.strictObject({
  meeting: uuidV7,
  entries: z.array(z.unknown()).check(z.minLength(1), z.maxLength(500)),
})
export type Append = z.infer<typeof appendSchema>

const saved = { id: uuidV7, seq: z.int(), recordedAt: timeMs, role: roleSchema }
export const appendResultSchema = z.discriminatedUnion('outcome', [
  z.object({ outcome: z.literal('recorded'), ...saved }),
  /** It was already there, byte for byte: success. */
  z.object({ outcome: z.literal('duplicate'), ...saved }),
  z.object({
    outcome: z.literal('refused'),
    id: z.nullable(z.string()),
    refusal: refusalSchema,
    detail: z.optional(z.string()),
  }),
])
export type AppendResult = z.infer<typeof appendResultSchema>

/** In the order of the entries. */
export const appendedSchema = z.object({ results: z.array(appendResultSchema) })
export type Appended = z.infer<typeof appendedSchema>
