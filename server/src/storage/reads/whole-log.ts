/** A log to its end, page after page. */
import type { RecordedEntry } from '@pitlamp/race'
import type { Reads } from './index.ts'

export async function wholeLog(
  read: Pick<Reads, 'entriesAfter'>,
  meeting: string,
  after = 0,
): Promise<readonly RecordedEntry[]> {
  const entries: RecordedEntry[] = []
  for (;;) {
    const page = await read.entriesAfter(meeting, entries.at(-1)?.seq ?? after)
    if (page.length === 0) return entries
    entries.push(...page)
  }
}
