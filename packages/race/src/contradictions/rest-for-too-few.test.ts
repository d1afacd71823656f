import { expect, test } from 'vitest'
import type { ProgrammeItem } from '../documents/rules.ts'
import { restForTooFew } from './rest-for-too-few.ts'
import { crewOf, MINUTE, rule, said, segment } from './testing/looking.ts'

const stint = (minutes: number) => rule('continuousDriving', { atMostMs: minutes * MINUTE })
const rest = (minutes: number) =>
  rule('driverRest', { atLeastMs: minutes * MINUTE, marshalling: 'isRest' })

test('two drivers with stints of 10 min rest for 10 each, not for 11', () => {
  // 60 min: 10 in every 20 are 30 for each of two. In every 21: 2 × 10 and 10 of the 18 left, 30 as well …
  expect(said(restForTooFew, [stint(10), rest(10)], { people: crewOf(2) })).toEqual([])
  // … so it takes a segment in which it shows: of 63 min 3 × 10 each, 60 together.
  const programme = [segment('s1', 63)]
  expect(said(restForTooFew, [stint(10), rest(10)], { people: crewOf(2), programme })).toEqual([])
  expect(said(restForTooFew, [stint(10), rest(11)], { people: crewOf(2), programme })).toEqual([
    '2 drivers cannot fill segment 1 with that much rest. With stints of 0:10 they can drive 1:00 of its 1:03.',
  ])
  expect(said(restForTooFew, [stint(10), rest(11)], { people: crewOf(3), programme })).toEqual([])
})

test('rest as a share of the stint: one part in two is driven', () => {
  const share = rule('driverRest', { shareOfStint: 1_000, marshalling: 'isRest' })
  // One driver: 10 min and half of the other 50, 35 of 60; two drive 70.
  expect(said(restForTooFew, [stint(10), share], { people: crewOf(2) })).toEqual([])
  expect(said(restForTooFew, [stint(10), share], { people: crewOf(1) })).toEqual([
    'One driver cannot fill segment 1 with that much rest. With stints of 0:10 they can drive 0:35 of its 1:00.',
  ])
})

test('one driver rests in breaks only', () => {
  const pause = (kind: 'break' | 'laneChange', minutes: number): readonly ProgrammeItem[] => [
    segment('s1'),
    { id: 'between', kind, lengthMs: minutes * MINUTE },
    segment('s2'),
  ]
  const judge = (programme: readonly ProgrammeItem[], count = 1) =>
    said(restForTooFew, [rest(20)], { programme, people: crewOf(count) })
  expect(judge(pause('break', 20))).toEqual([])
  expect(judge(pause('break', 19))).toEqual([
    'The only driver cannot rest long enough between segments. Before segment 2 there is a break of 0:19, and rest lasts at least 0:20.',
  ])
  expect(judge(pause('break', 19), 2)).toEqual([])
  // A stint goes on over a lane change, and a break of no known length may be long enough.
  expect(judge(pause('laneChange', 5))).toEqual([])
  expect(judge([segment('s1'), { id: 'between', kind: 'break' }, segment('s2')])).toEqual([])
})
