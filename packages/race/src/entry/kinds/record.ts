/** The record itself: documents adopted, advice given, notes, photographs, actions, corrections. */
import * as z from 'zod/mini'
import { count, id, name, timeMs, words } from '../scalars.ts'

export const DOCUMENTS = ['rules', 'crew', 'car', 'plan', 'evidence'] as const
export const documentName = z.enum(DOCUMENTS)
export type DocumentName = z.infer<typeof documentName>

const sha256 = z.string().check(z.regex(/^[0-9a-f]{64}$/))

export const recordKinds = {
  /** The only way a document reaches a meeting; its content is inline, so the log needs nothing else. */
  'adopted.1': z.strictObject({
    document: documentName,
    version: count,
    sha256,
    content: z.unknown(),
    /** Meeting time from which it holds; what happened before is judged by what was in force then. */
    appliesFrom: timeMs,
    /** A correction sets right what was always meant and holds from the start; a change holds from now. */
    as: z.enum(['correction', 'change']),
  }),
  /** What the program advised when somebody acted on it. */
  'advised.1': z.strictObject({ about: name, advice: words, basis: z.optional(z.unknown()) }),
  'note.1': z.strictObject({
    words: z.string().check(z.minLength(1), z.maxLength(2000)),
    about: z.optional(id),
  }),
  'photograph.1': z.strictObject({
    sha256,
    bytes: count,
    of: z.optional(id),
    words: z.optional(words),
  }),
  'action.1': z.strictObject({ words, person: z.optional(id), dueBefore: z.optional(timeMs) }),
  /**
   * Sets right an original entry. `basedOn` is the correction it follows, or the target itself when it is
   * the first. An empty `replace` restores the original; `apart` splits a second witness off again.
   */
  'correction.1': z.strictObject({
    target: id,
    basedOn: id,
    change: z.discriminatedUnion('what', [
      z.strictObject({
        what: z.literal('replace'),
        at: z.optional(timeMs),
        body: z.optional(z.unknown()),
        apart: z.optional(z.literal(true)),
      }),
      z.strictObject({ what: z.literal('void') }),
    ]),
    reason: z.string().check(z.maxLength(500)),
  }),
} as const
