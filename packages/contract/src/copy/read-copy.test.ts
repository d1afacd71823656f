import { describe, expect, it } from 'vitest'
import { COPY_LIMIT_BYTES, type MeetingCopy } from './meeting-copy.ts'
import { readCopy } from './read-copy.ts'
import { writeCopy } from './write-copy.ts'

const id = '01999999-0000-7000-8000-000000000001'
const entry = {
  ...({ v: 1, id, device: id, n: 1, at: 5, atBoundMs: 5, epoch: 1 } as const),
  ...{ kind: 'note.1', body: '{"words":"a \\" and ü"}' },
}
const copy: MeetingCopy = {
  ...{ pitlampCopy: 1, writtenAt: 9, asOf: 8 },
  device: { id, name: 'Wall tablet', role: 'pitWall' },
  meeting: {
    ...{ id, name: 'Lantern Forty', fictional: false, createdAt: 0, lastSeq: 1 },
    clock: { anchorServerMs: 0, anchorMeetingMs: 0, rate: 1 },
  },
  devices: [],
  people: [{ id, name: 'Ida Quill' }],
  drafts: [{ document: 'rules', version: 2, content: { any: 'thing' }, savedAt: 7 }],
  recorded: [{ ...entry, seq: 1, recordedAt: 6, role: 'pitWall' }],
  unsent: [{ entry: { ...entry, n: 2 }, role: 'pitWall', refused: 'roleMayNot' }],
}
const OF_NUMBER_1 = `{
"pitlampCopy": 1,
"writtenAt": 9,
"asOf": 8,
"device": {"id":"01999999-0000-7000-8000-000000000001","name":"Wall tablet","role":"pitWall"},
"meeting": {"id":"01999999-0000-7000-8000-000000000001","name":"Lantern Forty","fictional":false,"createdAt":0,"lastSeq":1,"clock":{"anchorServerMs":0,"anchorMeetingMs":0,"rate":1}},
"devices": [],
"people": [
{"id":"01999999-0000-7000-8000-000000000001","name":"Ida Quill"}
],
"drafts": [
{"document":"rules","version":2,"content":{"any":"thing"},"savedAt":7}
],
"recorded": [
{"v":1,"id":"01999999-0000-7000-8000-000000000001","device":"01999999-0000-7000-8000-000000000001","n":1,"at":5,"atBoundMs":5,"epoch":1,"kind":"note.1","body":"{\\"words\\":\\"a \\\\\\" and ü\\"}","seq":1,"recordedAt":6,"role":"pitWall"}
],
"unsent": [
{"entry":{"v":1,"id":"01999999-0000-7000-8000-000000000001","device":"01999999-0000-7000-8000-000000000001","n":2,"at":5,"atBoundMs":5,"epoch":1,"kind":"note.1","body":"{\\"words\\":\\"a \\\\\\" and ü\\"}"},"role":"pitWall","refused":"roleMayNot"}
]
}
`
const problemOf = (text: string) => {
  const read = readCopy(text)
  return 'problem' in read ? read.problem : 'none'
}

describe('a copy in a file', () => {
  it('is read as it was written, each entry on a line of its own', () => {
    const text = writeCopy(copy)
    expect(readCopy(text)).toEqual({ copy })
    expect(text.split('\n')).toContain(JSON.stringify(copy.recorded[0]))
    expect(text.startsWith('{\n"pitlampCopy": 1,\n"writtenAt": 9,\n')).toBe(true)
  })

  it('of number 1 is read for ever, as the first screens wrote it', () => {
    expect(readCopy(OF_NUMBER_1)).toEqual({ copy })
  })

  it('is refused where it is broken, cut off anywhere', () => {
    const text = writeCopy(copy).trimEnd()
    for (let end = 0; end < text.length; end += 1) {
      expect(problemOf(text.slice(0, end))).toMatch(/^It is broken/)
    }
  })

  it.each([
    ['{"name":"something else"}', /no copy of a meeting/],
    ['null', /no copy of a meeting/],
    ['[]', /no copy of a meeting/],
    ['"pitlampCopy"', /no copy of a meeting/],
    ['{"pitlampCopy":2}', /newer Pitlamp/],
    ['{"pitlampCopy":1}', /^It is damaged at writtenAt/],
    ['{"pitlampCopy":0}', /^It is damaged at pitlampCopy/],
  ])('is refused where it is %s', (text, why) => {
    expect(problemOf(text)).toMatch(why)
  })

  it('says where it is damaged, and takes nothing that it does not know', () => {
    const [recorded] = copy.recorded
    const bad = { ...copy, recorded: [recorded, { ...recorded, seq: 0 }] }
    expect(problemOf(JSON.stringify(bad))).toMatch(/^It is damaged at recorded\.1\.seq/)
    expect(problemOf(JSON.stringify({ ...copy, key: 'a' }))).toMatch(/^It is damaged/)
    const clock = { ...copy.meeting.clock, rate: 0 }
    const stopped = { ...copy, meeting: { ...copy.meeting, fictional: true, clock } }
    expect(problemOf(JSON.stringify(stopped))).toMatch(/^It is damaged at meeting/)
  })

  it.each([
    ['a draft without content', { drafts: [{ document: 'plan', version: 3 }] }, 'drafts.0'],
    ['a draft of version 0', { drafts: [{ document: 'plan', version: 0, content: 1 }] }, 'drafts'],
    // 2³¹ − 1: the next save would have a number that no database holds.
    [
      'a draft that cannot be saved again',
      { drafts: [{ document: 'plan', version: 2_147_483_647, content: 1 }] },
      'drafts.0.version',
    ],
    ['NUL in a person’s name', { people: [{ id, name: 'Ida\0Quill' }] }, 'people.0'],
    ['NUL in a device’s name', { devices: [{ id, name: 'Wall\0tablet' }] }, 'devices.0'],
    ['NUL in its writer’s name', { device: { ...copy.device, name: '\0' } }, 'device'],
    ['NUL in its meeting’s name', { meeting: { ...copy.meeting, name: 'a\0' } }, 'meeting'],
  ])('is refused where it has %s', (_what, more, where) => {
    expect(problemOf(JSON.stringify({ ...copy, ...more }))).toContain(`damaged at ${where}`)
  })

  it('may have a draft of the last version that can be saved again', () => {
    const drafts = [{ document: 'plan', version: 2_147_483_646, content: null }]
    expect(problemOf(JSON.stringify({ ...copy, drafts }))).toBe('none')
  })

  it('is refused where it is too long, unread', () => {
    expect(problemOf(' '.repeat(COPY_LIMIT_BYTES + 1))).toMatch(/longer than the 24 MiB/)
  })
})
