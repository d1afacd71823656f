import { expect, test } from 'vitest'
import { drive, GREEN_AT, marshal, span, timelineOf } from '../checks/testing/judging.ts'
import { doubleBooked } from './double-booked.ts'

const MINUTE = 60_000
const one = timelineOf({ spans: [drive('Ana', 0, 30), marshal('Ben', 0, 60)] })
const minutes = (found: ReturnType<typeof doubleBooked>) =>
  found.map(({ person, fromAt, toAt }) => [
    ...[person, (fromAt - GREEN_AT) / MINUTE, (toAt - GREEN_AT) / MINUTE],
  ])

test('who is in two places is named, with the time both claim, soonest first', () => {
  const other = timelineOf({
    spans: [marshal('Ben', 40, 70), drive('Ana', 20, 40), drive('Cem', 0, 20)],
  })
  expect(minutes(doubleBooked(one, other))).toEqual([
    ['Ana', 20, 30],
    ['Ben', 40, 60],
  ])
})

test('one after the other is no clash, off duty is no duty', () => {
  const off = span({ person: 'Ben', duty: 'offDuty' }, 0, 60)
  expect(doubleBooked(one, timelineOf({ spans: [drive('Ana', 30, 40), off] }))).toEqual([])
  expect(doubleBooked(timelineOf({ spans: [off] }), one)).toEqual([])
})

test('where going from one to the other takes time, that is needed between them', () => {
  const other = timelineOf({ spans: [drive('Ana', 34, 40)] })
  expect(doubleBooked(one, other, { atLeastMs: 4 * MINUTE })).toEqual([])
  expect(minutes(doubleBooked(one, other, { atLeastMs: 5 * MINUTE }))).toEqual([['Ana', 30, 34]])
})
