/** The file a screen writes: this meeting as this device has it. */
import * as z from 'zod/mini'
import { entrySchema, recordedEntrySchema, roleSchema, timeMs, uuidV7 } from '@pitlamp/race'
import { draftSchema } from '../http/document.ts'
import { meetingSchema, type Meeting } from '../http/meeting.ts'
import { personSchema } from '../http/person.ts'
import { refusalSchema } from '../refusal.ts'

/** A reader refuses what was written under a later number; an earlier one is read for ever. */
export const COPY_VERSION = 1

/** More than three times a day's race of twenty thousand entries. */
export const COPY_LIMIT_BYTES = 24 * 1024 * 1024
const MOST_ENTRIES = 100_000
const MOST_NAMES = 1_000

/** One before the last that every database holds, so that the draft can be saved once more. */
const LAST_VERSION = 2_147_483_646

const name = z.string().check(z.maxLength(80), z.refine(hasNoNul, 'a character that no name has'))
const person = personSchema.check(
  z.refine((one) => hasNoNul(one.name), { error: 'a character that no name has', path: ['name'] }),
)
/** One that was saved. */
const draft = z
  .extend(draftSchema, { version: z.int().check(z.minimum(1), z.maximum(LAST_VERSION)) })
  .check(z.refine(({ content }) => content !== undefined, { error: 'none', path: ['content'] }))

/** An entry that is not, or not any more, on the server's disk as far as this device knows. */
const unsentSchema = z.strictObject({
  entry: entrySchema,
  /** The role that this device had; absent where another device made the entry. */
  role: z.optional(roleSchema),
  /** Why the server did not take it. It is in the copy, and is not brought in. */
  refused: z.optional(refusalSchema),
})
export type Unsent = z.infer<typeof unsentSchema>

export const meetingCopySchema = z.strictObject({
  /** Says what the file is, and under which number it was written. */
  pitlampCopy: z.literal(COPY_VERSION),
  /** By the device's own clock. */
  writtenAt: timeMs,
  /** The same moment in meeting time, as the device reckoned it. */
  asOf: timeMs,
  /** Who wrote it. */
  device: z.object({ id: uuidV7, name, role: roleSchema }),
  /** `lastSeq` is the highest number this device has heard of: its own log may end before it. */
  meeting: meetingSchema.check(
    z.refine(isOneThatCanBeMade, 'a name or a rate that no meeting has'),
  ),
  /** What the devices of the team were last called. */
  devices: z.array(z.strictObject({ id: uuidV7, name })).check(z.maxLength(MOST_NAMES)),
  people: z.array(person).check(z.maxLength(MOST_NAMES)),
  /** As this device last saw them; what was adopted is in the log besides. */
  drafts: z.array(draft).check(z.maxLength(10)),
  /** As the server recorded them, by their numbers. */
  recorded: z.array(recordedEntrySchema).check(z.maxLength(MOST_ENTRIES)),
  unsent: z.array(unsentSchema).check(z.maxLength(MOST_ENTRIES)),
})
export type MeetingCopy = z.infer<typeof meetingCopySchema>

/** As with a meeting that is made: only a fictional one runs faster than life. */
function isOneThatCanBeMade({ name, fictional, clock: { rate } }: Meeting): boolean {
  const named = name.trim() !== '' && name.length <= 80 && hasNoNul(name)
  return named && (rate === 1 || (fictional && rate > 1 && rate <= 1000))
}

/** Not every database stores it. */
function hasNoNul(text: string): boolean {
  return !text.includes('\0')
}
