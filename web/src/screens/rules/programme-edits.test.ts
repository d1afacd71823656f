import type { ProgrammeItem, Regulations } from '@pitlamp/race'
import { expect, it } from 'vitest'
import {
  addItem,
  addSegment,
  giveLanes,
  itemWords,
  laneCount,
  lengthText,
  move,
  programmeWords,
  setLength,
} from './programme-edits.ts'

const MINUTE_MS = 60_000
const rules = (...programme: ProgrammeItem[]): Regulations => ({
  ...{ name: 'Two forties', timeZone: 'Europe/Dublin', rules: [] },
  programme,
})
const forty = (id: string): ProgrammeItem => ({
  ...{ id, kind: 'segment' },
  length: { by: 'time', lengthMs: 40 * MINUTE_MS },
})
const ids = ({ programme }: Regulations) => programme.map(({ id }) => id).join(' ')

it('adds a segment like the last one, and an id nobody has or may get back', () => {
  const written = rules(forty('s1'))
  addSegment(written, [{ id: 's3' }])
  expect(written.programme[1]).toEqual({ ...forty('s1'), id: 's4' })
  giveLanes(written)
  addSegment(written)
  expect(written.programme.map((item) => item.kind === 'segment' && item.lane)).toEqual([
    ...['notDrawnYet', 'notDrawnYet', 'notDrawnYet'],
  ])
})

it('adds a break as long as the last one', () => {
  const written = rules(forty('s1'), { id: 'b9', kind: 'break', lengthMs: 5 * MINUTE_MS })
  addItem(written, 'break')
  addItem(written, 'practice')
  expect(written.programme.slice(2).map(lengthText)).toEqual(['5 min', '10 min'])
})

it('moves up and down, and stays at the ends', () => {
  const written = rules(forty('a'), forty('b'), forty('c'))
  move(written, 2, -1)
  expect(ids(written)).toBe('a c b')
  move(written, 0, 1)
  expect(ids(written)).toBe('c a b')
  move(written, 0, -1)
  move(written, 2, 1)
  expect(ids(written)).toBe('c a b')
})

it('counts segments among themselves', () => {
  const written = rules({ id: 'b', kind: 'briefing' }, forty('s1'), {
    ...forty('s2'),
    name: 'Dark forty',
  })
  expect(written.programme.map((item) => itemWords(written.programme, item))).toEqual([
    ...['Briefing', 'Segment 1', 'Segment 2'],
  ])
})

it('offers as many lanes as the rules name', () => {
  const written = rules(forty('s1'))
  expect(laneCount(written)).toBe(6)
  written.rules.push({ id: 't', kind: 'tracks', value: { tracks: 2, lanes: 'notKnownYet' } })
  expect(laneCount(written)).toBe(6)
  written.rules[0] = { id: 't', kind: 'tracks', value: { tracks: 2, lanes: 8 } }
  expect(laneCount(written)).toBe(8)
})

it('reads the length of a segment as time or laps, and leaves a break without one', () => {
  const segment = forty('s1')
  expect(setLength(segment, '0:55') && lengthText(segment)).toBe('0:55')
  expect(setLength(segment, '200 laps') && lengthText(segment)).toBe('200 laps')
  expect(setLength(segment, 'long')).toBe(false)
  const pause: ProgrammeItem = { id: 'b', kind: 'break', lengthMs: MINUTE_MS }
  expect(setLength(pause, '') && lengthText(pause)).toBe('')
})

it('sums a programme up', () => {
  const change: ProgrammeItem = { id: 'l', kind: 'laneChange', lengthMs: 5 * MINUTE_MS }
  expect(
    programmeWords(rules({ id: 'b', kind: 'briefing' }, forty('s1'), change, forty('s2'))),
  ).toBe('one briefing, 2 segments of 0:40, one lane change of 5 min')
})
