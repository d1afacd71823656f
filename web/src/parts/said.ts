/** The last lines of the log as the wall repeats them, with what became of each. */
import type { LogLine, ReadEntry, State } from '@pitlamp/race'
import type { Saved } from '../meeting/port.ts'
import type { CrewNames } from './crew.ts'
import { entryWords } from './entry-words.ts'
import type { SaidShown } from './shown.ts'
import { clockTime } from './time.ts'

const SAVED_WORDS = {
  saved: undefined,
  onlyOnThisPage: 'not kept yet',
  keptOnThisDevice: 'kept on this device',
  refused: 'not taken: see Log',
} as const satisfies Record<Saved, string | undefined>

type Readable = LogLine & { readonly entry: ReadEntry }

/** Newest first. Corrections and documents say nothing of their own here; a voided press stays, struck out. */
export function lastSaid(
  state: State,
  most: number,
  { crew, savedOf }: { readonly crew: CrewNames; readonly savedOf: (entry: string) => Saved },
): readonly SaidShown[] {
  const last: Readable[] = []
  const { log } = state.record
  for (let i = log.length - 1; i >= 0 && last.length < most; i -= 1) {
    const line = log[i]
    if (line && speaks(line)) last.push(line)
  }
  return last.map(({ entry, at, standing }) => ({
    id: entry.id,
    time: clockTime(at, crew.timeZone, { seconds: true }),
    words: entryWords(entry, crew.nameOf),
    undone: standing === 'voided',
    saved: SAVED_WORDS[savedOf(entry.id)],
  }))
}

function speaks(line: LogLine): line is Readable {
  if ('unread' in line.entry || line.standing === 'correction') return false
  return line.standing !== 'secondWitness' && line.entry.kind !== 'adopted.1'
}
