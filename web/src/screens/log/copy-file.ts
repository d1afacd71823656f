/** What the file is called that a copy is written into, and what is said of it then. */
import type { MeetingCopy } from '@pitlamp/contract'
import { entriesInWords, heldInWords, missingIn } from '../../parts/copy-words.ts'

/** `pitlamp-lantern-forty-wall-tablet-2026-11-26-1432.json` */
export function fileName({ meeting, device, writtenAt }: MeetingCopy): string {
  const at = new Date(writtenAt).toISOString().slice(0, 16).replace('T', '-').replace(':', '')
  return `${['pitlamp', plain(meeting.name), plain(device.name), at].filter(Boolean).join('-')}.json`
}

export function written(copy: MeetingCopy, asOf: string): readonly string[] {
  const missing = missingIn(copy)
  return [
    `Written, as of ${asOf}: ${heldInWords(copy)}. The browser keeps the file with what it downloads.`,
    ...(missing > 0
      ? [`The server had ${entriesInWords(missing)} more that have not come to this device.`]
      : []),
    'No key or code is in it, but whoever has the file can read the meeting.',
    'Should the server be dead: start Pitlamp on another machine, and on its Meetings screen bring this file in.',
  ]
}

function plain(name: string): string {
  return name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-|-$/g, '')
    .slice(0, 40)
}
