import {
  COPY_LIMIT_BYTES,
  COPY_VERSION,
  meetingCopySchema,
  type MeetingCopy,
} from './meeting-copy.ts'

/** The copy, or why this text is none, in a sentence for whoever chose the file. Never throws. */
export type ReadCopy = { readonly copy: MeetingCopy } | { readonly problem: string }

export function readCopy(text: string): ReadCopy {
  // A character is a byte at least.
  if (text.length > COPY_LIMIT_BYTES) return { problem: TOO_LONG }
  const read = parsed(text)
  if (read === undefined) return { problem: BROKEN }
  const version = versionOf(read.value)
  if (version === undefined) return { problem: FOREIGN }
  if (version > COPY_VERSION) return { problem: NEWER }
  const found = meetingCopySchema.safeParse(read.value)
  if (found.success) return { copy: found.data }
  return { problem: damagedAt(found.error.issues[0]?.path ?? []) }
}

const LIMIT_MIB = COPY_LIMIT_BYTES / 1024 / 1024
const TOO_LONG = `It is longer than the ${String(LIMIT_MIB)} MiB that a copy may have.`
const BROKEN = 'It is broken: its end is missing, or it was changed. Write the copy again.'
const FOREIGN = 'It is no copy of a meeting that a screen of Pitlamp wrote.'
const NEWER = 'It was written by a newer Pitlamp. Put that on this server first.'

function damagedAt(path: readonly PropertyKey[]): string {
  const where = path.map(String).join('.')
  return `It is damaged${where === '' ? '' : ` at ${where}`}. Write the copy again.`
}

/** Undefined where it is no JSON; a value of `null` is one. */
function parsed(text: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) as unknown }
  } catch {
    return undefined
  }
}

function versionOf(value: unknown): number | undefined {
  if (typeof value !== 'object' || value === null || !('pitlampCopy' in value)) return undefined
  return typeof value.pitlampCopy === 'number' ? value.pitlampCopy : undefined
}
