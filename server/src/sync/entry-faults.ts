/** What an entry is refused for by itself, whoever sends it. */
import type { Refusal } from '@pitlamp/contract'
import { bodyLimitBytes, readEntry, type Entry } from '@pitlamp/race'

export interface EntryFault {
  readonly refusal: Refusal
  readonly detail?: string
}

/** Its kind, where it is known, must fit its body. */
export function faultIn(entry: Entry): EntryFault | undefined {
  const fault = faultOfBody(entry)
  if (fault) return fault
  const read = readEntry(entry)
  const misfits = 'unread' in read && read.unread === 'malformed'
  return misfits ? { refusal: 'malformed', ...(read.why && { detail: read.why }) } : undefined
}

/** Why the body cannot be stored as it is. */
export function faultOfBody({ body, kind }: Entry): EntryFault | undefined {
  if (Buffer.byteLength(body) > bodyLimitBytes(kind)) return { refusal: 'tooLarge' }
  // Half a character, or none, cannot be stored byte for byte everywhere.
  if (!isWellFormed(body) || body.includes('\0'))
    return { refusal: 'malformed', detail: 'The body is not Unicode text.' }
  return undefined
}

function isWellFormed(text: string): boolean {
  return !/[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/.test(text)
}
