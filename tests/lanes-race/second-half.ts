/** Two dark segments with their light tests, lights that fail, a penalty in laps, a sit-out, and ten minutes at the end. */
import {
  compulsoryRepairs,
  comparableAt,
  laneChange,
  obligations,
  resultOf,
  segmentClock,
  segmentsOf,
  standing,
} from '@pitlamp/race'
import { expect } from 'vitest'
import { at, type Race } from '../scripted-race.ts'
import { EDDA, FALK, GWEN, HALE } from './documents.ts'
import { BROUGHT } from './laps.ts'
import { withoutHale } from './plans.ts'
import { broken, brought, findingsAt, tells, told } from './reading.ts'
import type { Variant } from './variants.ts'

export async function firstDark(race: Race): Promise<void> {
  const { wall, phone } = race
  const lightsDue = async (seconds: number) =>
    obligations(await race.state(), at(seconds))
      .filter(({ kind }) => kind === 'lightTest')
      .map(({ id, dueAt, label }) => [id, dueAt, label])
  expect(laneChange(await race.state(), at(6_560))).toMatchObject({
    ...{ from: { lane: 1 }, to: { lane: 3, colour: 'green' }, driver: EDDA },
    lights: { state: 'open', darkness: { is: 'dark' } },
  })
  expect(await lightsDue(6_560)).toEqual([
    ['lightTest:s5', at(6_800), 'Try the lights: Segment 5 is dark'],
  ])
  await race.say(6_570, [wall, 'inspected.1', { what: 'Lights', inOrder: false }])
  expect(await lightsDue(6_580)).toEqual([
    ['lightTest:s5', at(6_800), 'Lights not in order: Segment 5 is dark'],
  ])
  await race.say(6_700, [wall, 'inspected.1', { what: 'Lights', inOrder: true }])
  expect(await lightsDue(6_710)).toEqual([])
  const moves = [
    { person: FALK, duty: 'wall' as const },
    { person: GWEN, duty: 'post' as const, post: '3' },
    { person: EDDA, duty: 'controller' as const },
  ]
  await race.say(6_720, [wall, 'handover.1', { moves }])
  await race.say(6_800, [wall, 'green.1', { segment: 's5' }])
  const fault = (await race.say(7_400, [phone, 'faultNoted.1', { fault: 'Lights' }])).id
  // 120 − 50.
  expect(compulsoryRepairs(await race.state(), at(7_450))).toMatchObject([
    { rule: 'lights', clause: '5.1', limit: { by: 'time', remainingMs: 70_000 }, costLaps: 1 },
  ])
  await race.say(7_460, [wall, 'repairStarted.1', { fault }])
  await race.say(7_530, [wall, 'repairFinished.1', { fault }])
  expect(compulsoryRepairs(await race.state(), at(7_540))).toEqual([])
  await race.say(8_000, [wall, 'segmentEnd.1', { segment: 's5' }])
  await brought(race, 8_060, { segment: 's5', rows: BROUGHT.s5 })
}

export async function fiveLaps(race: Race, { afterPenalty }: Variant): Promise<void> {
  const words = 'Ran without lights in the dark'
  const penalty = { what: 'laps', laps: 5, scope: 'race', words } as const
  await race.say(8_120, [race.captains, 'penalty.1', penalty])
  const state = await race.state()
  // 140 − 5.
  expect(standing(state, at(8_130))).toMatchObject({
    ...{ place: 2, shown: { laps: 140, sections: 40 }, ours: { laps: 135, sections: 40 } },
    ...{ since: { penaltyLaps: 5 }, comparable: { is: 'tooEarly', through: 5 } },
  })
  expect(resultOf(state, at(8_130))?.lines.find(({ ours }) => ours)?.distance).toEqual(afterPenalty)
}

export async function secondDark(race: Race): Promise<void> {
  const { wall } = race
  // Tried before the fifth; the sixth is dark, too.
  expect(laneChange(await race.state(), at(8_130))?.lights?.state).toBe('open')
  await race.say(8_150, [wall, 'inspected.1', { what: 'Lights', inOrder: true }])
  expect(laneChange(await race.state(), at(8_155))?.lights?.state).toBe('inOrder')
  const moves = [
    { person: GWEN, duty: 'wall' as const },
    { person: FALK, duty: 'controller' as const },
    { person: EDDA, duty: 'post' as const, post: '5' },
  ]
  await race.say(8_160, [wall, 'handover.1', { moves }])
  await race.say(8_300, [wall, 'green.1', { segment: 's6' }])
  await race.say(8_700, [wall, 'trackCall.1', {}])
  await race.say(8_740, [wall, 'powerOn.1', {}])
  // 700 gone, 40 of them held.
  expect(segmentClock(await race.state(), at(9_000))?.elapsedMs).toBe(660_000)
  await race.say(9_540, [wall, 'segmentEnd.1', { segment: 's6' }])
  await brought(race, 9_600, { segment: 's6', rows: BROUGHT.s6 })
  const rest = [
    { person: EDDA, duty: 'post' as const, post: '1' },
    { person: FALK, duty: 'post' as const, post: '2' },
    { person: GWEN, duty: 'offDuty' as const },
  ]
  await race.say(9_700, [wall, 'handover.1', { moves: rest }])
  await race.say(9_840, [wall, 'green.1', { segment: 's7' }])
  await race.say(11_040, [wall, 'segmentEnd.1', { segment: 's7' }])
  await brought(race, 11_050, { segment: 's7', rows: BROUGHT.s7 })
}

export async function tenMinutesAtTheEnd(race: Race, { gwenDrove }: Variant): Promise<void> {
  const { wall, captains } = race
  const shorter = { segment: 's8', change: { what: 'length', lengthMs: 600_000 } } as const
  const tell = await tells(race, 11_060, [captains, 'segmentChanged.1', shorter])
  expect(tell(GWEN)).toEqual(['Your stint in Segment 8 now lasts 0:10.'])
  // From 11,340 on, and Hale leaves at 11,100.
  expect(tell(HALE)).toEqual([
    'Your post in Segment 8 now lasts 0:10. You are not there for 0:10 of it.',
  ])
  const short = await race.state()
  expect(segmentsOf(short, at(11_070)).at(-1)).toMatchObject({
    ...{ startsAt: at(11_340), endsAt: at(11_940), lengthMs: 600_000 },
  })
  // At least 2,000 s are now at least 1,875.
  const tooLittle = ['driving:atLeast', [GWEN], gwenDrove * 1_000, 1_875_000]
  expect(broken(findingsAt(short, 11_070))).toEqual([
    ['isThere:away', [HALE], 600_000, 0],
    ...(gwenDrove < 1_875 ? [tooLittle] : []),
  ])
  const adopting = () => race.adopt(11_080, { document: 'plan', content: withoutHale })
  const adopted = await told(race, 11_090, adopting)
  expect([adopted(HALE), adopted(FALK), adopted(GWEN)]).toEqual([
    ['Your post in Segment 8 is dropped.'],
    ['Your post in Segment 8 is new.'],
    [],
  ])
  const moves = [
    { person: EDDA, duty: 'wall' as const },
    { person: FALK, duty: 'post' as const, post: '6' },
    { person: GWEN, duty: 'controller' as const },
  ]
  await race.say(11_200, [wall, 'handover.1', { moves }])
  expect(comparableAt(await race.state(), at(11_210))).toMatchObject({ is: 'tooEarly', through: 7 })
  await race.say(11_340, [wall, 'green.1', { segment: 's8' }])
  await race.say(11_940, [wall, 'segmentEnd.1', { segment: 's8' }])
  await brought(race, 12_000, { segment: 's8', rows: BROUGHT.s8 })
}
