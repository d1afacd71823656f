/**
 * The envelope of an entry, version 1: who pressed what, when, as counted by the device that made it.
 * `body` is JSON text. It is stored and forwarded byte for byte and parsed only to refuse or to fold,
 * so that an entry this build does not know survives it unharmed.
 */
import * as z from 'zod/mini'

export const ENVELOPE_VERSION = 1

/** UUID version 7 (RFC 9562), lower case, as the device made it. */
export const uuidV7 = z
  .string()
  .check(z.regex(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/))

/** Meeting time or server time: whole milliseconds since 1970, far enough for any race and safe to add. */
export const timeMs = z.int().check(z.minimum(0), z.maximum(8_640_000_000_000))

export const ROLES = ['viewer', 'crew', 'pitWall', 'captain'] as const
export type Role = (typeof ROLES)[number]
export const roleSchema = z.enum(ROLES)

export const entrySchema = z.strictObject({
  v: z.literal(ENVELOPE_VERSION),
  id: uuidV7,
  /** The device's id; the server accepts only entries of the device that sends them. */
  device: uuidV7,
  /** 1, 2, 3 … per device, so that a gap shows as entries still on that device. */
  n: z.int().check(z.minimum(1)),
  /** Who the device's holder says they are. A claim, never a permission. */
  person: z.optional(uuidV7),
  /** Meeting time of the press, as the device reckons it. */
  at: timeMs,
  /** How far off `at` may be, as the device knew when pressing. */
  atBoundMs: z.int().check(z.minimum(0), z.maximum(86_400_000)),
  /** Which reading of the server's clock `at` was reckoned by. */
  epoch: z.int().check(z.minimum(0)),
  /** Name and shape number, such as `stopOut.1`. */
  kind: z.string().check(z.regex(/^[a-z][A-Za-z]{0,39}\.[1-9][0-9]{0,2}$/)),
  body: z.string(),
})
export type Entry = z.infer<typeof entrySchema>

/** What the server adds when an entry is on its disk. */
export const recordedEntrySchema = z.strictObject({
  ...entrySchema.shape,
  /** Place in the meeting's log: 1, 2, 3 … without gaps. */
  seq: z.int().check(z.minimum(1)),
  /** Meeting time at which the server took it. */
  recordedAt: timeMs,
  /** The role the device held then: of two witnesses the wall's time counts. */
  role: roleSchema,
})
export type RecordedEntry = z.infer<typeof recordedEntrySchema>

const KIB = 1024
const BODY_LIMIT_BYTES = 8 * KIB
const ADOPTED_LIMIT_BYTES = 48 * KIB

/** The most bytes (UTF-8) the body of this kind may have. */
export function bodyLimitBytes(kind: string): number {
  return kind.startsWith('adopted.') ? ADOPTED_LIMIT_BYTES : BODY_LIMIT_BYTES
}
