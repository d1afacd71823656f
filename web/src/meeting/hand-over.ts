/**
 * A device that was taken out of the team may no longer record, but what it had recorded before is not lost: it
 * goes to the server once more, which puts it before the captain. Here it stays kept as well.
 */
import { BATCH_ENTRIES } from '@pitlamp/contract'
import type { SyncState } from '@pitlamp/sync'
import { appendOverHttp } from '../api/meeting.ts'

export async function handOver({ meeting, pending }: SyncState): Promise<void> {
  const entries = pending.flatMap(({ entry, recorded }) => (recorded ? [] : [entry]))
  for (let from = 0; from < entries.length; from += BATCH_ENTRIES) {
    await appendOverHttp(meeting, entries.slice(from, from + BATCH_ENTRIES))
  }
}
