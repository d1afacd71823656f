import { expect, test } from 'vitest'
import { compareDistances, scoringOf, sumOf } from './sums.ts'

const of = (sections: 'added' | 'carriedOn' | 'dropped', by: 'laps' | 'lapsAndSections') =>
  scoringOf({ by, sections }, 50)
/** The worked values: 50 sections a lap. */
const two = [
  { laps: 10, sections: 35 },
  { laps: 10, sections: 40 },
]

test('added, sections are added in sections', () => {
  // 10.35 + 10.40: 75 sections are a lap and 25.
  expect(sumOf(two, of('added', 'lapsAndSections'))).toEqual({ laps: 21, sections: 25 })
  // And 21.25 + 9.25 = 30.50 = 31.00.
  const three = [...two, { laps: 9, sections: 25 }]
  expect(sumOf(three, of('added', 'lapsAndSections'))).toEqual({ laps: 31, sections: 0 })
})

test('carried on or dropped, only the last segment’s section counts', () => {
  expect(sumOf(two, of('carriedOn', 'lapsAndSections'))).toEqual({ laps: 20, sections: 40 })
  expect(sumOf(two, of('dropped', 'lapsAndSections'))).toEqual({ laps: 20, sections: 40 })
  const open = [{ laps: 10, sections: 35 }, { laps: 10 }]
  expect(sumOf(open, of('dropped', 'lapsAndSections'))).toEqual({ laps: 20 })
})

test('where laps alone count there is no section, and where the rules say nothing sections are added', () => {
  expect(sumOf(two, of('added', 'laps'))).toEqual({ laps: 20 })
  expect(sumOf(two, scoringOf(undefined, 50))).toEqual({ laps: 21, sections: 25 })
  const unsaid = scoringOf({ by: 'notKnownYet', sections: 'notKnownYet' }, undefined)
  // Without the track's sections none is carried.
  expect(sumOf(two, unsaid)).toEqual({ laps: 20, sections: 75 })
})

test('of nothing there is nothing, and one segment is itself', () => {
  expect(sumOf([], of('added', 'lapsAndSections'))).toEqual({ laps: 0 })
  expect(sumOf(two.slice(0, 1), of('added', 'lapsAndSections'))).toEqual({ laps: 10, sections: 35 })
})

test('further is by laps, then by sections', () => {
  expect(compareDistances({ laps: 10, sections: 5 }, { laps: 9, sections: 49 })).toBe(1)
  expect(compareDistances({ laps: 10, sections: 5 }, { laps: 10, sections: 49 })).toBe(-44)
  expect(compareDistances({ laps: 10 }, { laps: 10, sections: 0 })).toBe(0)
})
