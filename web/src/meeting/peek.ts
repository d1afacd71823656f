/** The state of a meeting that nobody has open: what is in store, and what the server has beyond it. */
import type { Meeting as Info } from '@pitlamp/contract'
import { fold, readEntry, type RecordedEntry, type State } from '@pitlamp/race'
import { askEntriesAfter } from '../api/meeting.ts'
import { readKept } from './kept.ts'
import type { Memory } from './memory.ts'
import { Outbox } from './outbox.ts'

/** What is fetched is kept, so that opening the meeting finds it here. */
export async function peek(memory: Memory, { id }: Info, device: string): Promise<State> {
  const { store } = memory
  const kept = store && (await readKept(store, id, device).catch(() => undefined))
  const log: RecordedEntry[] = []
  for (const entry of kept?.confirmed ?? []) if (entry.seq === log.length + 1) log.push(entry)
  const fresh = await beyond(id, log.length)
  const outbox = new Outbox({ meeting: id, device, store })
  if (fresh.length > 0) await outbox.keep({ do: 'keep', confirmed: fresh }).catch(() => undefined)
  return fold([...log, ...fresh].map(readEntry))
}

async function beyond(meeting: string, after: number): Promise<RecordedEntry[]> {
  const fresh: RecordedEntry[] = []
  for (;;) {
    const page = await askEntriesAfter(meeting, after + fresh.length)
    if ('failed' in page || page.ok.entries.length === 0) return fresh
    fresh.push(...page.ok.entries)
    if (page.ok.to >= page.ok.last) return fresh
  }
}
