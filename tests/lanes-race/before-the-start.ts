/** The plan before the draw, the lane that qualifying gave, the plan after it, and a start twenty minutes late. */
import { segmentsOf } from '@pitlamp/race'
import { expect } from 'vitest'
import { at, type Race } from '../scripted-race.ts'
import { EDDA, FALK, GWEN, HALE } from './documents.ts'
import { afterDraw } from './plans.ts'
import { broken, findingsAt, laneNumbers, tells, told } from './reading.ts'

export async function theDraw(race: Race): Promise<void> {
  expect(laneNumbers(await race.state(), -2_000)).toEqual(Array(8).fill('notDrawnYet'))
  // L1: one press, and everything that hangs on it follows.
  const tell = await tells(race, -1_800, [race.wall, 'startDrawn.1', { lane: 4 }])
  const state = await race.state()
  // 1 3 5 – 6 4 2 –, begun at 4.
  const lanes = [4, 2, 'sitOut', 1, 3, 5, 'sitOut', 6]
  expect(laneNumbers(state, -1_790)).toEqual(lanes)
  expect(tell(GWEN)).toEqual([
    'Your stint in Segment 3 is dropped.',
    'Your stint in Segment 6 is on lane 5, yellow.',
  ])
  // The plan has post 1 everywhere, which is the lane's in the fourth.
  expect(tell(HALE)).toEqual([
    'Your post in Segment 1 is at post 4.',
    'Your post in Segment 2 is at post 2.',
    'Your post in Segment 5 is at post 3.',
    'Your post in Segment 6 is at post 5.',
    'Your post in Segment 8 is at post 6.',
  ])
  // Without the third and the seventh Gwen is left with the sixth, Falk has the second, the fifth and the eighth.
  expect(broken(findingsAt(state, -1_790))).toEqual([
    ['sitOut:posts', [HALE], 1, 2],
    ['sitOut:posts', [HALE], 1, 2],
    ['each:atLeast', [GWEN], 1, 2],
    ['each:atMost', [FALK], 3, 2],
    // One segment of twenty minutes; at most 2,560 s are less than three.
    ['driving:atLeast', [GWEN], 1_200_000, 2_000_000],
    ['driving:atMost', [FALK], 3_600_000, 2_560_000],
  ])
}

export async function thePlanAfterIt(race: Race): Promise<void> {
  const adopting = () => race.adopt(-1_700, { document: 'plan', content: afterDraw })
  const tell = await told(race, -1_690, adopting)
  expect(tell(GWEN)).toEqual([
    'Your time at the wall in Segment 1 is new.',
    'Your stint in Segment 4 is new.',
    'Your post in Segment 5 is new.',
    'Your stint in Segment 6 is dropped.',
    'Your time at the wall in Segment 6 is new.',
    'Your stint in Segment 8 is new.',
  ])
  expect(broken(findingsAt(await race.state(), -1_690))).toEqual([])
}

export async function twentyMinutesLate(race: Race): Promise<void> {
  const moved = { fromItem: 's1', byMs: 1_200_000 }
  const tell = await tells(race, -1_500, [race.captains, 'programmeMoved.1', moved])
  // The last one was to run from 9,300 to 10,500; now from 10,500 to 11,700, and Hale leaves at 11,100.
  expect(tell(HALE)).toEqual([
    'Your post in Segment 1 begins 0:20 later.',
    'Your post in Segment 2 begins 0:20 later.',
    'Your post in Segment 3 begins 0:20 later.',
    'Your post in Segment 8 begins 0:20 later. You are not there for 0:10 of it.',
  ])
  const state = await race.state()
  // Every 1,500 s from 0 on.
  expect(segmentsOf(state, at(-1_490)).map(({ startsAt }) => startsAt)).toEqual([
    ...[at(0), at(1_500), at(3_000), at(4_500), at(6_000), at(7_500), at(9_000), at(10_500)],
  ])
  expect(broken(findingsAt(state, -1_490))).toEqual([['isThere:away', [HALE], 600_000, 0]])
  const moves = [
    { person: HALE, duty: 'post' as const, post: '4' },
    { person: GWEN, duty: 'wall' as const },
    { person: EDDA, duty: 'controller' as const },
  ]
  await race.say(-60, [race.wall, 'handover.1', { moves }])
}
