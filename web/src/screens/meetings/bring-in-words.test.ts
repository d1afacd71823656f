import type { BroughtIn, MeetingCopy } from '@pitlamp/contract'
import type { Entry } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { becameOf, holds } from './bring-in-words.ts'

const id = '018f3a50-6a00-7000-8000-0000000000a1'
const tablet = '018f3a50-6a00-7000-8000-0000000000d1'
const meeting = {
  ...{ id, name: 'Lantern Forty', fictional: false, createdAt: 0, lastSeq: 5 },
  clock: { anchorServerMs: 0, anchorMeetingMs: 0, rate: 1 },
}
const entry: Entry = {
  ...{ v: 1, id, device: tablet, n: 1, at: 1, atBoundMs: 0, epoch: 1 },
  ...{ kind: 'trackCall.1', body: '{}' },
}
const copy: MeetingCopy = {
  ...{ pitlampCopy: 1, writtenAt: 0, asOf: 0, meeting },
  device: { id: tablet, name: 'Wall tablet', role: 'pitWall' },
  devices: [{ id: tablet, name: 'Wall tablet' }],
  ...{ people: [], drafts: [] },
  recorded: [1, 2, 3].map((seq) => ({ ...entry, seq, recordedAt: 1, role: 'pitWall' })),
  unsent: [{ entry, role: 'pitWall' }],
}
const result: BroughtIn = { meeting, recorded: 3, unsent: 1, already: 0, left: [] }

it('says what is in a copy before it is brought in', () => {
  expect(holds({ copy, clashes: [] }, '14:08:14')).toBe(
    'Lantern Forty: 4 entries, 1 of them on a device only, as of 14:08:14',
  )
})

it('says what was kept, and that the server had more', () => {
  const [first, second, ...rest] = becameOf({ copy, clashes: [] }, result)
  expect(first).toBe(
    'Lantern Forty is here: 4 entries brought in, with the ids they had, 1 of them from a device that had not sent them.',
  )
  // It had heard of five, and has three.
  expect(second).toMatch(/^The old server had 2 entries more than these copies\./)
  expect(rest).toHaveLength(2)
  expect(rest.join(' ')).toMatch(/Every device joins again.*At another address write a copy/)
})

it('says what was left out, and which of two stands', () => {
  const clash = { entry: id, device: tablet, n: 7, stands: 'recorded' } as const
  const left: BroughtIn['left'] = [
    { entry: id, refusal: 'otherBody' },
    { entry: id, refusal: 'roleMayNot' },
    { entry: id, refusal: 'malformed' },
  ]
  const all = { ...copy, meeting: { ...meeting, lastSeq: 3 } }
  const none = { ...result, recorded: 0, unsent: 0, already: 3, left, behindMs: 180_000 }
  expect(becameOf({ copy: all, clashes: [clash] }, none)).toEqual([
    'Lantern Forty is here: 0 entries brought in, with the ids they had.',
    '3 entries were here already.',
    'Entry 7 of Wall tablet is not the same in every copy. The one that the server had recorded was taken.',
    '1 entry left out: here is another one under the same id, which stands.',
    '2 entries left out: their device might not record them, or they do not make sense.',
    'This machine’s clock is 3 min behind the copy, and every countdown with it: set it right and start the server again.',
  ])
})
