/** Copies for tests, of a log whose entries are notes. */
import type { MeetingCopy } from '@pitlamp/contract'
import { meeting, wall } from '../log/entries.fixture.ts'
import type { About } from './copy-of.ts'

export function about(more: Partial<About> = {}): About {
  return {
    writtenAt: 3_000_000,
    asOf: 3_000_000,
    device: { id: wall, name: 'Wall tablet', role: 'pitWall' },
    meeting: {
      id: meeting,
      name: 'Lantern Forty',
      fictional: false,
      clock: { anchorServerMs: 0, anchorMeetingMs: 0, rate: 1 },
      createdAt: 0,
      lastSeq: 0,
    },
    ...{ devices: [], people: [], drafts: [] },
    ...more,
  }
}

export function copy(more: Partial<MeetingCopy> = {}): MeetingCopy {
  return { pitlampCopy: 1, ...about(), recorded: [], unsent: [], ...more }
}
