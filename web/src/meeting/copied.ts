/** This meeting as this device has it just now, for a file. It asks nobody: the server may be dead. */
import type { MeetingCopy } from '@pitlamp/contract'
import { copyOf, type SyncState } from '@pitlamp/sync'
import { readLaidDown } from './kept-drafts.ts'
import type { Line } from './line.svelte.ts'
import type { Memory } from './memory.ts'

interface Has {
  readonly line: Pick<Line, 'me' | 'info' | 'names'>
  readonly memory: Pick<Memory, 'store'>
  /** Meeting time. */
  readonly asOf: number
}

export async function copied(log: SyncState, { line, memory, asOf }: Has): Promise<MeetingCopy> {
  const { me, info, names } = line
  const { id, name, role } = me.device
  const { store } = memory
  const laidDown = store && (await readLaidDown(store, info.id).catch(() => undefined))
  return copyOf(log, {
    writtenAt: Date.now(),
    asOf,
    device: { id, name, role },
    meeting: info,
    devices: Object.entries({ ...names, [id]: name }).map(([of, called]) => ({
      id: of,
      name: called.slice(0, LONGEST_NAME),
    })),
    ...(laidDown ?? { drafts: [], people: [] }),
  })
}

const LONGEST_NAME = 80
