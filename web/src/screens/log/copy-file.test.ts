import type { MeetingCopy } from '@pitlamp/contract'
import { expect, it } from 'vitest'
import { fileName, written } from './copy-file.ts'

const copy: MeetingCopy = {
  ...{ pitlampCopy: 1, asOf: 0, writtenAt: Date.UTC(2030, 5, 1, 12, 34) },
  device: { id: '018f3a50-6a00-7000-8000-0000000000d1', name: 'Wall’s tablet', role: 'pitWall' },
  meeting: {
    ...{ id: '018f3a50-6a00-7000-8000-0000000000a1', name: 'Lantern Forty!', fictional: false },
    ...{ createdAt: 0, lastSeq: 2 },
    clock: { anchorServerMs: 0, anchorMeetingMs: 0, rate: 1 },
  },
  ...{ devices: [], people: [], drafts: [], recorded: [], unsent: [] },
}

it('names the file so that any disk takes it', () => {
  expect(fileName(copy)).toBe('pitlamp-lantern-forty-wall-s-tablet-2030-06-01-1234.json')
  const { meeting } = copy
  const elsewhere = { ...copy, meeting: { ...meeting, name: '夜間四十' } }
  expect(fileName(elsewhere)).toBe('pitlamp-wall-s-tablet-2030-06-01-1234.json')
})

it('says what was written, and what the server had besides', () => {
  const [first, second] = written(copy, '14:08:14')
  expect(first).toMatch(/^Written, as of 14:08:14: 0 entries\./)
  expect(second).toBe('The server had 2 entries more that have not come to this device.')
})
