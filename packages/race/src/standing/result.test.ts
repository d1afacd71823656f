import { expect, test } from 'vitest'
import type { Rule, RuleValue } from '../rules/index.ts'
import { changedTo } from '../testing/changed.ts'
import { classify } from '../testing/classified.ts'
import { greenOf, laneMeeting, LANE_RULES, runSegments } from '../testing/lane-meeting.ts'
import type { Pressing } from '../testing/pressing.ts'
import { MINUTE } from '../testing/small-meeting.ts'
import { resultOf, type OfSegments, type Result } from './result.ts'

const NOW = greenOf(9)
const entered = (number: number) => greenOf(number) + 21 * MINUTE

/** Each list is what a segment brought, in its order. */
function raced(
  segments: readonly (readonly string[])[],
  also: readonly Rule[] = [],
  stageOf: (number: number) => number | undefined = () => undefined,
): Pressing {
  const segment = (number: number) => ({ stage: stageOf(number) })
  const pressing = laneMeeting({ also, segments: Math.max(2, segments.length), segment })
  segments.forEach((rows, index) => {
    runSegments(pressing, index + 1, index + 1)
    classify(pressing, entered(index + 1), { segment: `s${index + 1}`, rows })
  })
  return pressing
}
const result = (pressing: Pressing, of?: OfSegments) => resultOf(pressing.state(), NOW, of)
const places = (found: Result | undefined) =>
  found?.lines.map(({ place, entrant, distance, points }) => {
    const { laps, sections } = distance
    const far =
      sections === undefined ? String(laps) : `${laps}.${String(sections).padStart(2, '0')}`
    return `${place} ${entrant} ${points === undefined ? far : points}`
  })
const rule = <K extends Rule['kind']>(kind: K, value: RuleValue<K>) => {
  return { id: kind, kind, value } as Rule
}

test('segments are summed, laps to laps and sections to sections', () => {
  const pressing = raced([
    ['Wren 10.40', 'Us 10.35', 'Lantern 9.00'],
    ['Us 10.40', 'Wren 10.20', 'Lantern 10.10'],
  ])
  const found = result(pressing)
  // Us 10.35 + 10.40 = 21.25, Wren 10.40 + 10.20 = 21.10.
  expect(places(found)).toEqual(['1 Us 21.25', '2 Wren 21.10', '3 Lantern 19.10'])
  expect(found?.lines.map(({ behind }) => behind)).toEqual([
    { laps: 0, sections: 0 },
    { laps: 0, sections: 15 },
    { laps: 2, sections: 15 },
  ])
  expect(places(result(pressing, { before: 1 }))?.[0]).toBe('1 Wren 10.40')
})

test('nothing without a classification of a segment', () => {
  const pressing = laneMeeting()
  classify(pressing, NOW - MINUTE, { scope: 'whole', rows: ['Us 5'] })
  expect(resultOf(pressing.state(), NOW)).toBeUndefined()
})

test('L49: of a run the last classification entered counts', () => {
  const pressing = raced([['Wren 10.40', 'Us 10.35']])
  classify(pressing, entered(1) + MINUTE, { segment: 's1', rows: ['Us 11.00', 'Wren 10.40'] })
  expect(places(result(pressing))).toEqual(['1 Us 11.00', '2 Wren 10.40'])
})

test('L48: of a segment run again both runs count, or the last alone', () => {
  const twice = (lapsCount: boolean) => {
    const pressing = raced([['Wren 10.40', 'Us 10.35']])
    changedTo(pressing, entered(1) + MINUTE, {
      ...{ segment: 's1', what: 'runAgain', lapsCount, drivingCounts: true },
    })
    pressing.press(greenOf(2), 'green.1', { segment: 's1' })
    classify(pressing, entered(2), { segment: 's1', rows: ['Us 12.05', 'Wren 12.00'] })
    return places(result(pressing))
  }
  // 10.35 + 12.05 = 22.40; 10.40 + 12.00 = 22.40.
  expect(twice(true)).toEqual(['1 Wren 22.40', '1 Us 22.40'])
  expect(twice(false)).toEqual(['1 Us 12.05', '2 Wren 12.00'])
})

test('L49: a penalty in laps comes off unless its segment was entered after it', () => {
  const rows = ['Us 100.00', 'Wren 95.00']
  const penalty = { what: 'laps', laps: 10, scope: 'race' } as const
  const ours = (pressing: Pressing) =>
    result(pressing)?.lines.find((one) => one.ours)?.distance.laps
  const taken = laneMeeting({ segments: 2 })
  taken.press(greenOf(1) - MINUTE, 'penalty.1', { ...penalty, laps: 1 })
  runSegments(taken, 1, 1)
  const during = taken.press(greenOf(1) + MINUTE, 'penalty.1', penalty)
  classify(taken, entered(1), { segment: 's1', rows })
  // The one before the first green comes off, the ten are in the hundred already.
  expect(ours(taken)).toBe(99)
  const after = taken.press(entered(1) + MINUTE, 'penalty.1', penalty)
  expect(ours(taken)).toBe(89)
  taken.press(entered(1) + 2 * MINUTE, 'penaltyWithdrawn.1', { penalty: after })
  taken.press(entered(1) + 3 * MINUTE, 'penaltyWithdrawn.1', { penalty: during })
  // What was in the classification is given back.
  expect(ours(taken)).toBe(109)
  taken.press(entered(1) + 4 * MINUTE, 'lapsCorrected.1', { laps: 1, sections: 20 })
  expect(result(taken)?.lines[0]?.distance).toEqual({ laps: 110, sections: 20 })
})

test('L49: what was given in a later segment is in no earlier one, entered again or not', () => {
  const pressing = raced([['Us 12.00', 'Wren 10.00']])
  runSegments(pressing, 2, 2)
  pressing.press(greenOf(2) + MINUTE, 'penalty.1', { what: 'laps', laps: 3, scope: 'race' })
  pressing.press(greenOf(2) + MINUTE, 'lapsCorrected.1', { laps: 1 })
  pressing.press(greenOf(2) + MINUTE, 'penalty.1', { what: 'lossOfSegment', scope: 'segment' })
  // 12 less 3 and 1 more; the segment lost is the second, which nothing is known of yet.
  expect(places(result(pressing))).toEqual(['1 Us 10.00', '1 Wren 10.00'])
  classify(pressing, entered(2), { segment: 's1', rows: ['Us 12.05', 'Wren 10.00'] })
  expect(places(result(pressing))).toEqual(['1 Us 10.05', '2 Wren 10.00'])
  classify(pressing, entered(2), { segment: 's2', rows: ['Wren 9.00', 'Us 0.00'] })
  expect(places(result(pressing))).toEqual(['1 Wren 19.00', '2 Us 12.05'])
  // All three are in the second: the first alone is as it was entered.
  expect(places(result(pressing, { before: 1 }))).toEqual(['1 Us 12.05', '2 Wren 10.00'])
})

test('whoever lost a segment has none of it, and whoever is excluded comes last', () => {
  const lost = raced([
    ['Us 12.00', 'Wren 10.00'],
    ['Us 12.00', 'Wren 10.00'],
  ])
  lost.press(entered(2) + MINUTE, 'penalty.1', { what: 'lossOfSegment', scope: 'segment' })
  expect(places(result(lost))).toEqual(['1 Wren 20.00', '2 Us 12.00'])
  lost.press(entered(2) + 2 * MINUTE, 'penalty.1', { what: 'exclusion', scope: 'race' })
  expect(result(lost)?.lines.map(({ entrant, classified }) => [entrant, classified])).toEqual([
    ['Wren', true],
    ['Us', false],
  ])
})

test('whoever has less than the least share of the winner’s laps is not classified', () => {
  const pressing = raced(
    [['Wren 100', 'Us 75', 'Lantern 74']],
    [rule('classified', { atLeast: 750 })],
  )
  expect(result(pressing)?.lines.map(({ classified }) => classified)).toEqual([true, true, false])
})

test('ties: the best segment decides, then places are counted back', () => {
  const segments = [
    ['Wren 12.00', 'Us 11.00', 'Lantern 10.00'],
    ['Lantern 12.00', 'Us 11.00', 'Wren 10.00'],
  ]
  // All have 22.00. Best segments 12, 11, 12; of Wren and Lantern each has one first and one third place.
  const found = result(raced(segments, [rule('ties', { order: ['bestSegment', 'countBack'] })]))
  expect(places(found)).toEqual(['1 Wren 22.00', '1 Lantern 22.00', '3 Us 22.00'])
  expect(found?.lines.map(({ brokenBy }) => brokenBy)).toEqual([
    ...['bestSegment', 'bestSegment', 'bestSegment'],
  ])
  expect(found?.ties).toEqual([{ entrants: ['Wren', 'Lantern'] }])
  // A first and a third place come before two seconds.
  const back = result(raced(segments, [rule('ties', { order: ['countBack'] })]))
  expect(places(back)?.at(-1)).toBe('3 Us 22.00')
})

test('ties: a run-off waits for race control, and what comes after it may not decide before', () => {
  const also = [rule('ties', { order: ['runOff', 'bestSegment'] })]
  const pressing = raced(
    [
      ['Wren 12.00', 'Us 11.00'],
      ['Us 11.00', 'Wren 10.00'],
    ],
    also,
  )
  expect(places(result(pressing))).toEqual(['1 Wren 22.00', '1 Us 22.00'])
  expect(result(pressing)?.ties).toEqual([{ entrants: ['Wren', 'Us'], waitsFor: 'runOff' }])
  classify(pressing, entered(2) + MINUTE, { scope: 'whole', rows: ['Us 22.00', 'Wren 22.00'] })
  const found = result(pressing)
  expect(places(found)).toEqual(['1 Us 22.00', '2 Wren 22.00'])
  expect(found?.lines[0]?.brokenBy).toBe('runOff')
  expect(found?.ties).toEqual([])
})

test('points per segment from a table; beyond it there are none', () => {
  const also = [rule('points', { per: 'segment', table: [25, 18] })]
  const pressing = raced(
    [
      ['Wren 12.00', 'Us 11.00', 'Lantern 10.00'],
      ['Us 11.00', 'Lantern 10.30', 'Wren 10.00'],
    ],
    also,
  )
  // Us 18 + 25, Wren 25 + 0, Lantern 0 + 18; by distance Wren and Us would share the first place.
  expect(places(result(pressing))).toEqual(['1 Us 43', '2 Wren 25', '3 Lantern 18'])
  const open = raced(
    [['Wren 12.00', 'Us 11.00']],
    [rule('points', { per: 'segment', table: 'notKnownYet' })],
  )
  expect(result(open)).toMatchObject({ by: 'distance', pointsNotKnown: true })
})

test('points per stage: whole stages by their sums, or as race control placed them', () => {
  const also = [rule('points', { per: 'stage', table: [10, 6, 4] })]
  const segments = [
    ['Wren 12.00', 'Us 11.00', 'Lantern 10.00'],
    ['Us 12.00', 'Lantern 10.30', 'Wren 10.00'],
    ['Lantern 13.00', 'Wren 12.00', 'Us 11.00'],
  ]
  const pressing = raced(segments, also, (number) => (number <= 2 ? 1 : 2))
  // Stage 1: Us 23.00, Wren 22.00, Lantern 20.30; stage 2: Lantern, Wren, Us. Us 10 + 4, Lantern 4 + 10, Wren 6 + 6.
  expect(places(result(pressing))).toEqual(['1 Us 14', '1 Lantern 14', '3 Wren 12'])
  const half = raced(segments.slice(0, 1), also, () => 1)
  // No stage is whole yet.
  expect(places(result(half))).toEqual(['1 Wren 12.00', '2 Us 11.00', '3 Lantern 10.00'])
  const rows = ['Wren 23.00', 'Us 22.00', 'Lantern 20.30']
  classify(pressing, entered(3) + MINUTE, { scope: 'stage', segment: 's2', rows })
  // Now Us 6 + 4, Wren 10 + 6, Lantern 4 + 10.
  expect(places(result(pressing))).toEqual(['1 Wren 16', '2 Lantern 14', '3 Us 10'])
})

test('points per stage: what was taken from us since is off the sum of its stage', () => {
  const also = [rule('points', { per: 'stage', table: [10, 6] })]
  const staged = () =>
    raced(
      [
        ['Us 12.00', 'Wren 11.00'],
        ['Us 12.00', 'Wren 11.00'],
        ['Wren 12.00', 'Us 11.00'],
      ],
      also,
      (number) => (number <= 2 ? 1 : 2),
    )
  // Stage 1: Us 24.00, Wren 22.00; stage 2: Wren, Us.
  expect(places(result(staged()))).toEqual(['1 Us 16', '1 Wren 16'])
  const taken = staged()
  taken.press(entered(2) + MINUTE, 'penalty.1', { what: 'laps', laps: 3, scope: 'race' })
  // Between the stages: Us 21.00 in the first, so Wren has both; the second is as it was.
  expect(places(result(taken))).toEqual(['1 Wren 20', '2 Us 12'])
  const before = staged()
  before.press(greenOf(1) - MINUTE, 'penalty.1', { what: 'laps', laps: 3, scope: 'race' })
  expect(places(result(before))).toEqual(['1 Wren 20', '2 Us 12'])
  const lost = staged()
  lost.press(entered(2) + MINUTE, 'penalty.1', { what: 'lossOfSegment', scope: 'segment' })
  // 12.00 of 24.00 are left.
  expect(places(result(lost))).toEqual(['1 Wren 20', '2 Us 12'])
  const given = staged()
  given.press(entered(3) + MINUTE, 'lapsCorrected.1', { laps: 2 })
  // Stage 2: Us 13, Wren 12.
  expect(places(result(given))).toEqual(['1 Us 20', '2 Wren 12'])
})

test('names are compared without regard to capitals, and we are ourselves whatever we are called', () => {
  const pressing = raced([['Wren 10', 'Us 9']])
  runSegments(pressing, 2, 2)
  pressing.press(entered(2), 'classification.1', {
    ...{ standing: 'official', scope: 'segment', segment: 's2' },
    lines: [
      { place: 1, entrant: 'Our team', laps: 9, ours: true },
      { place: 2, entrant: ' WREN ', laps: 5 },
    ],
  })
  expect(places(result(pressing))).toEqual(['1 Us 18', '2 Wren 15'])
})

test('without sections in the rules laps alone count where they say so', () => {
  const rules = LANE_RULES.filter(({ kind }) => kind !== 'tracks')
  const pressing = laneMeeting({ rules: [...rules, rule('scoring', { by: 'laps' })], segments: 2 })
  runSegments(pressing, 1, 1)
  classify(pressing, entered(1), { segment: 's1', rows: ['Wren 10.40', 'Us 10.35'] })
  expect(places(result(pressing))).toEqual(['1 Wren 10', '1 Us 10'])
})

test('a row that does not say so is ours by the name we had elsewhere', () => {
  const pressing = raced([['Wren 10', 'Us 9']])
  runSegments(pressing, 2, 2)
  pressing.press(entered(2), 'classification.1', {
    ...{ standing: 'official', scope: 'segment', segment: 's2' },
    lines: [
      { place: 1, entrant: 'US', laps: 9 },
      { place: 2, entrant: 'Wren', laps: 5 },
    ],
  })
  expect(result(pressing)?.lines.map(({ ours, distance }) => [ours, distance.laps])).toEqual([
    [true, 18],
    [false, 15],
  ])
})
