/** What goes into the next batch, measured as it goes over the wire. */
import { BATCH_BYTES } from '@pitlamp/contract'
import { bodyLimitBytes, type Entry } from '@pitlamp/race'

/** What a message has around its entries: event name, meeting, brackets, frame. Generous. */
const ENVELOPE_BYTES = 256

/** The first entries that fit, at least one: a single entry may be longer than a batch should be. */
export function nextBatch(waiting: readonly Entry[]): Entry[] {
  const batch: Entry[] = []
  let bytes = ENVELOPE_BYTES
  for (const entry of waiting) {
    bytes += wireBytes(entry) + 1
    if (batch.length > 0 && bytes > BATCH_BYTES) break
    batch.push(entry)
  }
  return batch
}

/** Longer than its kind may be: the server would refuse it, or lose the connection over it. */
export function isTooLong(entry: Entry): boolean {
  return utf8Bytes(entry.body) > bodyLimitBytes(entry.kind)
}

/** UTF-8 bytes of the entry as JSON; its body is JSON text inside JSON, so every quote in it counts double. */
export function wireBytes(entry: Entry): number {
  return utf8Bytes(JSON.stringify(entry))
}

function utf8Bytes(text: string): number {
  let bytes = 0
  for (let at = 0; at < text.length; at += 1) bytes += unitBytes(text.charCodeAt(at))
  return bytes
}

/** UTF-8 bytes a UTF-16 code unit stands for; the halves of a pair make four bytes together. */
function unitBytes(unit: number): number {
  if (unit < 0x80) return 1
  if (unit < 0x800) return 2
  return unit >= 0xd800 && unit <= 0xdfff ? 2 : 3
}
