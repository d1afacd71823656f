/** Lane 4, lane 2, a segment sat out, and lane 1, which is stopped after 500 s and run again. */
import { comparableAt, currentRun, laneChange, resultOf, standing, stintClock } from '@pitlamp/race'
import { expect } from 'vitest'
import { at, type Race } from '../scripted-race.ts'
import { EDDA, FALK, GWEN, HALE } from './documents.ts'
import { BROUGHT } from './laps.ts'
import { brought, tells } from './reading.ts'
import type { Variant } from './variants.ts'

export async function firstLanes(race: Race): Promise<void> {
  const { wall } = race
  await race.say(0, [wall, 'green.1', { segment: 's1' }])
  await race.say(1_200, [wall, 'segmentEnd.1', { segment: 's1' }])
  // L2: there by itself from the segment's end.
  const change = laneChange(await race.state(), at(1_260))
  expect(change).toMatchObject({
    ...{ kind: 'laneChange', before: { index: 0, of: 8 }, next: { index: 1, of: 8 } },
    ...{ from: { lane: 4, colour: 'blue' }, to: { lane: 2, colour: 'white' } },
    ...{ driver: FALK, posts: [{ person: HALE, post: '2' }] },
    ...{ movedBy: 'judges', restartAt: 'sameSection', hands: { allowed: false, clause: '4.2' } },
    // A minute of three and of five is gone.
    earliest: { at: at(1_380), lengthMs: 180_000, toGoMs: 120_000 },
    planned: { at: at(1_500), lengthMs: 300_000, toGoMs: 240_000 },
  })
  expect(change?.moves.map(({ move, done }) => [move.person, move.duty, move.post, done])).toEqual([
    [HALE, 'post', '2', false],
    [EDDA, 'wall', undefined, false],
    [FALK, 'controller', undefined, false],
  ])
  await brought(race, 1_270, { segment: 's1', rows: BROUGHT.s1 })
  const moves = (change?.moves ?? []).map(({ move }) => move)
  await race.say(1_300, [wall, 'handover.1', { moves }])
  const made = laneChange(await race.state(), at(1_310))
  expect(made?.moves.map(({ done }) => done)).toEqual([true, true, true])
  await race.say(1_500, [wall, 'green.1', { segment: 's2' }])
  expect(laneChange(await race.state(), at(1_510))).toBeUndefined()
  await race.say(2_700, [wall, 'segmentEnd.1', { segment: 's2' }])
  await brought(race, 2_750, { segment: 's2', rows: BROUGHT.s2 })
  const state = await race.state()
  // 141.20 + 140.35 = 281 and 55 of 50; 140.45 + 140.40 = 280 and 85.
  expect(resultOf(state, at(2_760))?.lines.slice(0, 2)).toMatchObject([
    { entrant: 'Cobalt Quay', distance: { laps: 282, sections: 5 } },
    {
      entrant: 'Hop Yard',
      distance: { laps: 281, sections: 35 },
      behind: { laps: 0, sections: 20 },
    },
  ])
  // L6: no team has had every lane.
  expect(standing(state, at(2_760))?.comparable).toEqual({
    ...{ is: 'tooEarly', over: 0, through: 2, round: 8 },
  })
}

export async function satOut(race: Race): Promise<void> {
  const { wall } = race
  const change = laneChange(await race.state(), at(2_760))
  expect(change).toMatchObject({
    ...{
      from: { lane: 2 },
      to: 'sitOut',
      work: [],
      sitOut: { obliges: 'marshalSomePosts', posts: 2 },
    },
    posts: [
      { person: EDDA, post: '1' },
      { person: HALE, post: '2' },
    ],
  })
  expect(change).not.toHaveProperty('driver')
  // Falk still has the controller in his hand: he drives nothing with it.
  const moves = [{ person: EDDA, duty: 'post' as const, post: '1' }]
  await race.say(2_800, [wall, 'handover.1', { moves }])
  await race.say(3_000, [wall, 'green.1', { segment: 's3' }])
  expect(stintClock(await race.state(), at(3_600))).toBeUndefined()
  await race.say(4_200, [wall, 'segmentEnd.1', { segment: 's3' }])
  expect(laneChange(await race.state(), at(4_210))).toMatchObject({
    ...{ from: 'sitOut', to: { lane: 1, colour: 'red' }, driver: GWEN },
    posts: [{ person: FALK, post: '1' }],
  })
  await brought(race, 4_250, { segment: 's3', rows: BROUGHT.s3 })
  const back = [
    { person: EDDA, duty: 'wall' as const },
    { person: GWEN, duty: 'controller' as const },
    { person: FALK, duty: 'post' as const, post: '1' },
    { person: HALE, duty: 'offDuty' as const },
  ]
  await race.say(4_260, [wall, 'handover.1', { moves: back }])
}

export async function runAgain(race: Race, { counts }: Variant): Promise<void> {
  const { wall, captains } = race
  await race.say(4_500, [wall, 'green.1', { segment: 's4' }])
  const change = { what: 'runAgain', ...counts } as const
  const tell = await tells(race, 5_000, [captains, 'segmentChanged.1', { segment: 's4', change }])
  // Its first green was at 4,500, and now is 5,000; what comes after it begins as much later.
  expect(tell(GWEN)).toEqual([
    'Your stint in Segment 4 begins 0:08:20 later.',
    'Your post in Segment 5 begins 0:08:20 later.',
    'Your time at the wall in Segment 6 begins 0:08:20 later.',
    'Your stint in Segment 8 begins 0:08:20 later.',
  ])
  // From 11,000 to 12,200: Hale leaves at 11,100, 1,100 s too early.
  expect(tell(HALE)).toEqual([
    'Your post in Segment 8 begins 0:08:20 later. You are not there for 0:18:20 of it.',
  ])
  expect(currentRun(await race.state())).toBeUndefined()
  await brought(race, 5_020, { segment: 's4', rows: BROUGHT.s4stopped })
  await race.say(5_030, [captains, 'programmeMoved.1', { fromItem: 's4', byMs: 300_000 }])
  const again = await race.state()
  expect(laneChange(again, at(5_100))).toMatchObject({
    ...{ before: { index: 3 }, next: { index: 3 }, from: { lane: 1 }, to: { lane: 1 } },
    // Five minutes after it was stopped.
    planned: { at: at(5_300), toGoMs: 200_000 },
  })
  expect(comparableAt(again, at(5_100))).toMatchObject({ is: 'tooEarly', through: 3 })
  await race.say(5_300, [wall, 'green.1', { segment: 's4' }])
  await race.say(6_500, [wall, 'segmentEnd.1', { segment: 's4' }])
  await brought(race, 6_550, { segment: 's4', rows: BROUGHT.s4 })
}
