/** Entries that are kept and forwarded but cannot be folded are named, until they are mended or voided. */
import { isUnread } from '../entry/read.ts'
import type { Line } from './line.ts'
import { entriesAre, type Problems } from './problems.ts'

export function listUnread(lines: readonly Line[], problems: Problems): void {
  const unknown: string[] = []
  for (const { entry, standing } of lines) {
    if (!isUnread(entry) || standing !== 'unread') continue
    if (entry.unread === 'unknownKind') unknown.push(entry.id)
    else problems.push({ kind: 'unread', entries: [entry.id], sentence: cannotRead(entry.why) })
  }
  if (unknown.length === 0) return
  problems.push({
    kind: 'unread',
    entries: unknown,
    sentence: `${entriesAre(unknown.length)} of a kind this version does not know. Kept as sent.`,
  })
}

function cannotRead(why: string | undefined): string {
  return `An entry cannot be read and counts for nothing. Kept as it was sent. ${why ?? ''}`.trimEnd()
}
