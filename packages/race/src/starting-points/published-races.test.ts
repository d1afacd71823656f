/**
 * Four published sets raced through the log. The rules are those of the starting points, whose sources they name; what
 * is not published (lights, tables, names, laps) is invented here.
 */
import { expect, test } from 'vitest'
import { judge } from '../checks/judge.ts'
import { allowances } from '../clocks/allowances.ts'
import { compulsoryRepairs } from '../clocks/compulsory-repairs.ts'
import { laneChange } from '../clocks/lane-change.ts'
import type { Plan } from '../documents/plan.ts'
import type { Regulations } from '../documents/rules.ts'
import type { Rule } from '../rules/index.ts'
import { resultOf } from '../standing/result.ts'
import { comparableAt } from '../standing/comparable.ts'
import { classify } from '../testing/classified.ts'
import { GREEN, Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE } from '../testing/small-meeting.ts'
import { lanesOf } from '../time/lanes.ts'
import { planTimeline } from '../timeline/timeline.ts'
import { autumnEndurance } from './autumn-endurance.ts'
import { fourHourEnduro } from './four-hour-enduro.ts'
import { threeStages } from './three-stages.ts'
import { twoTracks } from './two-tracks.ts'

function meeting(regulations: Regulations, plan?: Plan): Pressing {
  const pressing = new Pressing()
  adopt(pressing, { document: 'rules', content: regulations })
  adopt(pressing, { document: 'crew', content: { people: [] } })
  if (plan) adopt(pressing, { document: 'plan', content: plan })
  return pressing
}

function run(pressing: Pressing, segment: string, minutes: readonly [number, number]): void {
  const [from, to] = minutes.map((minute) => GREEN + minute * MINUTE)
  pressing.press(from ?? GREEN, 'green.1', { segment })
  pressing.press(to ?? GREEN, 'segmentEnd.1', { segment })
}

const distances = (pressing: Pressing, now: number) =>
  resultOf(pressing.state(), now)?.lines.map(({ entrant, distance: { laps, sections } }) => [
    ...[entrant, laps, sections],
  ])

test('S2, 24 h at Sanremo: two tracks of six, an hour from green to green, ten laps for the rostrum', () => {
  const pressing = meeting(twoTracks.regulations)
  pressing.press(GREEN - 30_000, 'startDrawn.1', { lane: 9 })
  const lanes = [...lanesOf(pressing.state(), GREEN).values()]
  const at = (place: number) => lanes[place]
  // Lane 9 is lane 3 of the second track: 3 5 6 4 2 there, then lane 1 of the first.
  expect([at(0), at(1), at(5)]).toEqual([
    { lane: 3, track: 2 },
    { lane: 5, track: 2 },
    { lane: 1, track: 1 },
  ])
  // 24 segments are twice round twelve lanes.
  expect(lanes.slice(12)).toEqual(lanes.slice(0, 12))
  run(pressing, 's1', [0, 55])
  const ended = GREEN + 55 * MINUTE
  const change = laneChange(pressing.state(), ended + MINUTE)
  // Next start not before 3 min, planned after 5.
  expect([change?.earliest?.toGoMs, change?.planned.toGoMs]).toEqual([2 * MINUTE, 4 * MINUTE])
  expect(change).toMatchObject({ from: { lane: 3, track: 2 }, to: { lane: 5, track: 2 } })
  classify(pressing, ended + MINUTE, { segment: 's1', rows: ['Us 300', 'Wren 295'] })
  pressing.press(ended + 2 * MINUTE, 'penalty.1', {
    ...{ what: 'laps', laps: 10, scope: 'race', words: 'Somebody else on the rostrum' },
  })
  run(pressing, 's2', [60, 115])
  classify(pressing, GREEN + 116 * MINUTE, { segment: 's2', rows: ['Us 301', 'Wren 300'] })
  // 300 + 301 − 10 = 591 against 595.
  expect(distances(pressing, GREEN + 117 * MINUTE)).toEqual([
    ['Wren', 595, undefined],
    ['Us', 591, undefined],
  ])
  expect(comparableAt(pressing.state(), GREEN + 117 * MINUTE)).toMatchObject({
    ...{ is: 'tooEarly', round: 12 },
  })
})

test('S3, 12 h at Prato 2009: five laps for each segment without lights, six sets of rear tyres', () => {
  const programme: Regulations['programme'] = ['s1', 's2', 's3'].map((id) => ({
    ...{ id, kind: 'segment', length: { by: 'time', lengthMs: 240 * MINUTE } },
  }))
  const pressing = meeting({ ...autumnEndurance.regulations, programme })
  const rows = ['Us 1500', 'Wren 1496']
  ;['s1', 's2', 's3'].forEach((segment, place) => {
    const from = place * 250
    run(pressing, segment, [from, from + 240])
    classify(pressing, GREEN + (from + 241) * MINUTE, { segment, rows })
    const fitted = { position: 'Rear tyres', part: `Set ${place + 2}`, allowance: 'tyreSets' }
    pressing.press(GREEN + (from + 242) * MINUTE, 'partFitted.1', fitted)
  })
  for (const minute of [745, 746]) {
    const laps = { what: 'laps', laps: 5, scope: 'segment' } as const
    pressing.press(GREEN + minute * MINUTE, 'penalty.1', laps)
  }
  // 3 × 1500 − 2 × 5 = 4490 against 3 × 1496 = 4488.
  expect(distances(pressing, GREEN + 750 * MINUTE)).toEqual([
    ['Us', 4490, undefined],
    ['Wren', 4488, undefined],
  ])
  // The first and three more.
  const [tyres] = allowances(pressing.state(), GREEN + 750 * MINUTE)
  expect([tyres?.used, tyres?.left, tyres?.nextCosts]).toEqual([4, 2, { laps: 0 }])
})

test('S5, 4 h in Florida 2022: motor in segment 12 or 13, no running without lights in the dark', () => {
  const dark = (rule: Rule): Rule =>
    rule.kind === 'darkSegments' ? { ...rule, value: { segments: ['s3'] } } : rule
  const regulations = fourHourEnduro.regulations
  const plan = (segment: string): Plan => ({
    spans: [],
    stops: [{ id: 'p1', segment, atMs: MINUTE, mandatory: false, task: 'Motor change' }],
    captain: { goMarginMs: 2_000, askForClockAtMs: 5_000, hotWorkInStops: false },
  })
  const motor = (segment: string) => {
    const state = meeting(regulations, plan(segment)).state()
    return judge(state, planTimeline(state, GREEN), GREEN)
      .filter(({ rule }) => rule === 'motor')
      .map(({ verdict }) => verdict)
  }
  expect([motor('s12'), motor('s13'), motor('s14')]).toEqual([['kept'], ['kept'], ['broken']])

  const pressing = meeting({ ...regulations, rules: regulations.rules.map(dark) })
  const limit = (minute: number) => {
    const [repair] = compulsoryRepairs(pressing.state(), GREEN + minute * MINUTE)
    return [repair?.limit?.by, repair?.over]
  }
  run(pressing, 's1', [0, 10])
  pressing.press(GREEN + 5 * MINUTE, 'faultNoted.1', { fault: 'Lights' })
  // The next segment is light: nothing presses. Before the dark one it is the lane change, in it at once.
  expect(limit(6)).toEqual([undefined, false])
  pressing.press(GREEN + 12 * MINUTE, 'green.1', { segment: 's2' })
  expect(limit(13)).toEqual(['laneChange', false])
  pressing.press(GREEN + 22 * MINUTE, 'segmentEnd.1', { segment: 's2' })
  expect(limit(23)).toEqual(['laneChange', false])
  pressing.press(GREEN + 24 * MINUTE, 'green.1', { segment: 's3' })
  expect(limit(25)).toEqual(['atOnce', true])
})

test('S6, Group C 2015: three stages of eight segments, points a stage, the sum of three decides', () => {
  const table = (rule: Rule): Rule =>
    rule.kind === 'points' ? { ...rule, value: { per: 'stage', table: [20, 15, 12] } } : rule
  const { rules } = threeStages.regulations
  const pressing = meeting({ ...threeStages.regulations, rules: rules.map(table) })
  const stages = [
    ['Wren 310.20', 'Us 310.10', 'Lantern 300.00'],
    ['Us 311.00', 'Lantern 310.40', 'Wren 309.00'],
    ['Us 290.00', 'Wren 289.30', 'Lantern 280.00'],
  ]
  stages.forEach((rows, stage) => {
    for (let place = 0; place < 8; place += 1) {
      const number = stage * 8 + place
      run(pressing, `s${number + 1}`, [number * 60, number * 60 + 55])
      const segment = `s${number + 1}`
      classify(pressing, GREEN + (number * 60 + 56) * MINUTE, { segment, rows })
    }
  })
  const points = (now: number) =>
    resultOf(pressing.state(), now)?.lines.map(({ entrant, points: sum }) => [entrant, sum])
  // After the first stage, and after all three: Us 15 + 20 + 20, Wren 20 + 12 + 15, Lantern 12 + 15 + 12.
  expect(points(GREEN + 480 * MINUTE)).toEqual([
    ['Wren', 20],
    ['Us', 15],
    ['Lantern', 12],
  ])
  expect(points(GREEN + 1440 * MINUTE)).toEqual([
    ['Us', 55],
    ['Wren', 47],
    ['Lantern', 39],
  ])
})
