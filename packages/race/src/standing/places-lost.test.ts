import { expect, test } from 'vitest'
import type { Body } from '../entry/kinds/index.ts'
import type { Rule } from '../rules/index.ts'
import { classify } from '../testing/classified.ts'
import { greenOf, laneMeeting, runSegments } from '../testing/lane-meeting.ts'
import type { Pressing } from '../testing/pressing.ts'
import { MINUTE } from '../testing/small-meeting.ts'
import { movedDown, placesInWords, placesOf } from './places-lost.ts'
import { resultOf } from './result.ts'

const NOW = greenOf(9)
const ENTERED = greenOf(1) + 21 * MINUTE

/** One segment; the penalty is given after it was entered. */
function raced(rows: readonly string[], also: readonly Rule[] = []): Pressing {
  const pressing = laneMeeting({ also, segments: 2 })
  runSegments(pressing, 1, 1)
  classify(pressing, ENTERED, { segment: 's1', rows })
  return pressing
}

function give(pressing: Pressing, body: Partial<Body<'penalty.1'>>, at = ENTERED + MINUTE): string {
  return pressing.press(at, 'penalty.1', { ...{ what: 'position', scope: 'race' }, ...body })
}

const result = (pressing: Pressing) => resultOf(pressing.state(), NOW)
const places = (pressing: Pressing) =>
  result(pressing)?.lines.map(({ place, entrant }) => `${place} ${entrant}`)
const why = (pressing: Pressing) => result(pressing)?.notCounted.map((one) => one.why)

test('L51: places lost move us down, and what others are behind is reckoned from who is first then', () => {
  const pressing = raced(['Us 11.00', 'Wren 10.40', 'Lantern 10.00', 'Fen 9.00'])
  give(pressing, { words: '2 places' })
  expect(places(pressing)).toEqual(['1 Wren', '2 Lantern', '3 Us', '4 Fen'])
  const lines = result(pressing)?.lines ?? []
  expect(lines.map(({ placesLost }) => placesLost)).toEqual([undefined, undefined, 2, undefined])
  // Lantern 10.00 behind Wren 10.40: 40 sections of 50.
  expect(lines[1]?.behind).toEqual({ laps: 0, sections: 40 })
  expect(why(pressing)).toEqual([])
})

test('L51: at most to the last; two penalties add up; withdrawn they are gone', () => {
  const pressing = raced(['Us 11.00', 'Wren 10.40', 'Lantern 10.00'])
  const first = give(pressing, { words: '1 place' })
  expect(places(pressing)).toEqual(['1 Wren', '2 Us', '3 Lantern'])
  const second = give(pressing, { words: '5 places' }, ENTERED + 2 * MINUTE)
  expect(places(pressing)).toEqual(['1 Wren', '2 Lantern', '3 Us'])
  expect(result(pressing)?.lines[2]?.placesLost).toBe(2)
  pressing.press(ENTERED + 3 * MINUTE, 'penaltyWithdrawn.1', { penalty: second })
  expect(places(pressing)).toEqual(['1 Wren', '2 Us', '3 Lantern'])
  pressing.press(ENTERED + 4 * MINUTE, 'penaltyWithdrawn.1', { penalty: first })
  expect(places(pressing)).toEqual(['1 Us', '2 Wren', '3 Lantern'])
})

test('L51: whoever was equal with us is set apart, and other ties stay', () => {
  const pressing = raced(['Us 10.00', 'Wren 10.00', 'Lantern 10.00', 'Fen 9.00'])
  give(pressing, { words: '1 place' })
  // Three on one place: behind both who share it now.
  expect(places(pressing)).toEqual(['1 Wren', '1 Lantern', '3 Us', '4 Fen'])
  expect(result(pressing)?.ties).toEqual([{ entrants: ['Wren', 'Lantern'] }])
})

test('L51: what changes nothing in the result is named with the reason', () => {
  const pressing = raced(['Us 11.00', 'Wren 10.40'])
  const held = give(pressing, { what: 'stopAndGo', heldMs: 10_000 })
  give(pressing, {})
  give(pressing, { words: '1 place', scope: 'segment' })
  expect(why(pressing)).toEqual(['notServed', 'placesNotKnown', 'inItsClassification'])
  expect(places(pressing)).toEqual(['1 Us', '2 Wren'])
  // Served it has cost the laps not driven; the segment entered again holds its places.
  pressing.press(ENTERED + 2 * MINUTE, 'penaltyServed.1', { penalty: held })
  classify(pressing, ENTERED + 3 * MINUTE, { segment: 's1', rows: ['Wren 10.40', 'Us 11.00'] })
  expect(why(pressing)).toEqual(['placesNotKnown'])
})

test('L51: what is given in a segment waits for that one, also where an earlier one is entered again', () => {
  const pressing = raced(['Us 11.00', 'Wren 10.40'])
  runSegments(pressing, 2, 2)
  give(pressing, { words: '1 place', scope: 'segment' }, greenOf(2) + MINUTE)
  classify(pressing, greenOf(2) + 21 * MINUTE, { segment: 's1', rows: ['Us 11.05', 'Wren 10.40'] })
  expect(why(pressing)).toEqual(['inItsClassification'])
  classify(pressing, greenOf(2) + 22 * MINUTE, { segment: 's2', rows: ['Wren 10.40', 'Us 11.00'] })
  expect(why(pressing)).toEqual([])
})

test('L51: places that nobody is left for, and none at all, are named', () => {
  const pressing = raced(['Us 11.00', 'Wren 10.40', 'Lantern 10.00'])
  give(pressing, { words: '0 places' })
  expect(why(pressing)).toEqual(['nothingToLose'])
  const [first, second] = ['2 places', '1 place'].map((words, minute) =>
    give(pressing, { words }, ENTERED + (2 + minute) * MINUTE),
  )
  // The first takes us to the last place, the second no further.
  expect(places(pressing)).toEqual(['1 Wren', '2 Lantern', '3 Us'])
  const named = () => result(pressing)?.notCounted.map(({ penalty }) => penalty.entry)
  expect(named()).toEqual([expect.any(String), second])
  pressing.press(ENTERED + 4 * MINUTE, 'penaltyWithdrawn.1', { penalty: first ?? '' })
  expect(places(pressing)).toEqual(['1 Wren', '2 Us', '3 Lantern'])
  expect(why(pressing)).toEqual(['nothingToLose'])
})

test('L51: whoever is last already, or is excluded, has no place to lose', () => {
  const last = raced(['Wren 11.00', 'Us 10.40'])
  give(last, { words: '2 places' })
  expect(places(last)).toEqual(['1 Wren', '2 Us'])
  expect(why(last)).toEqual(['nothingToLose'])
  const excluded = raced(['Us 11.00', 'Wren 10.40'])
  give(excluded, { words: '1 place' })
  expect(why(excluded)).toEqual([])
  give(excluded, { what: 'exclusion' }, ENTERED + 2 * MINUTE)
  expect(places(excluded)).toEqual(['1 Wren', '2 Us'])
  expect(why(excluded)).toEqual(['nothingToLose'])
})

test('L51: with points the places of the race are lost all the same', () => {
  const points: Rule = { id: 'points', kind: 'points', value: { per: 'segment', table: [25, 18] } }
  const pressing = raced(['Us 11.00', 'Wren 10.40'], [points])
  give(pressing, { words: '1 place' })
  expect(places(pressing)).toEqual(['1 Wren', '2 Us'])
  expect(result(pressing)?.lines.map((line) => line.points)).toEqual([18, 25])
})

test('how many places is read as it was written', () => {
  // As they stand in logs.
  const written = ['0 places', '1 place', '2 places', '12 places', '999 places']
  expect([0, 1, 2, 12, 999].map(placesInWords)).toEqual(written)
  expect(written.map((words) => placesOf({ words }))).toEqual([0, 1, 2, 12, 999])
  expect(placesOf({ words: 'to the back' })).toBeUndefined()
  expect(placesOf({})).toBeUndefined()
})

test('down by places, not by groups', () => {
  const groups = [['us'], ['a', 'b'], ['c']]
  // One down is the place a and b share: behind both. Two down is the same.
  expect(movedDown(groups, 'us', 1)).toEqual([['a', 'b'], ['us'], ['c']])
  expect(movedDown(groups, 'us', 2)).toEqual([['a', 'b'], ['us'], ['c']])
  expect(movedDown(groups, 'us', 3)).toEqual([['a', 'b'], ['c'], ['us']])
  expect(movedDown(groups, 'us', 0)).toBe(groups)
  expect(movedDown(groups, 'nobody', 2)).toBe(groups)
})
