/** What a copy of a meeting holds, in words. */
import type { MeetingCopy } from '@pitlamp/contract'
import { counted } from '@pitlamp/race'

/** `1 entry`, `212 entries` */
export function entriesInWords(count: number): string {
  return counted(count, 'entry', 'entries')
}

/** `212 entries, 3 of them on a device only` */
export function heldInWords({
  recorded,
  unsent,
}: Pick<MeetingCopy, 'recorded' | 'unsent'>): string {
  const held = entriesInWords(recorded.length + unsent.length)
  return unsent.length === 0 ? held : `${held}, ${unsent.length} of them on a device only`
}

/** How many entries the server had, as far as the device knew, that the copy has not. */
export function missingIn({
  meeting,
  recorded,
}: Pick<MeetingCopy, 'meeting' | 'recorded'>): number {
  return Math.max(0, meeting.lastSeq - recorded.length)
}
