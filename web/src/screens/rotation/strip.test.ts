import type { Timeline, TimelineSegment } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { across, atOf, marksOn, positionOf, snapOf, stripOf } from './strip.ts'

const MINUTE_MS = 60_000
const HOUR_MS = 3_600_000
const segment = (id: string, startsAt: number): TimelineSegment => ({
  ...{ id, index: 0, after: 'start', over: false },
  ...{ startsAt, endsAt: startsAt + HOUR_MS, lengthMs: HOUR_MS },
})
/** An hour from 10:00, a break of half an hour, an hour from 11:30. */
const TEN = 10 * HOUR_MS
const segments = [segment('one', TEN), segment('two', TEN + 1.5 * HOUR_MS)]
const timeline: Timeline = { segments, spans: [], stops: [], isWhole: true, notDriving: [] }

test('the strip goes from the first green to the last end, there and back', () => {
  const strip = stripOf(timeline, 500, 0)
  expect([strip.fromAt, strip.toAt, strip.width]).toEqual([TEN, TEN + 2.5 * HOUR_MS, 500])
  expect(across(strip, TEN + HOUR_MS)).toBe(200)
  expect(atOf(strip, 200)).toBe(TEN + HOUR_MS)
  expect(stripOf(timeline, 500, 2).width).toBe(2_000)
})

test('a finger finds the race clock of the segment under it, or of the nearest', () => {
  const at = (hours: number) => positionOf(segments, TEN + hours * HOUR_MS, MINUTE_MS)
  expect(at(0.5)).toEqual({ segment: 'one', clockMs: HOUR_MS / 2 })
  expect(at(2)).toEqual({ segment: 'two', clockMs: HOUR_MS / 2 })
  // 11:05 is nearer to the end of the first, 11:25 to the beginning of the second.
  expect(at(1 + 5 / 60)).toEqual({ segment: 'one', clockMs: HOUR_MS })
  expect(at(1 + 25 / 60)).toEqual({ segment: 'two', clockMs: 0 })
  expect(at(-1)).toEqual({ segment: 'one', clockMs: 0 })
  expect(positionOf([], TEN, MINUTE_MS)).toBeUndefined()
})

test('it snaps to a minute only where a minute is three pixels wide', () => {
  // 150 min on 500 px are 3.33 px a minute, on 400 px 2.67.
  expect(snapOf(stripOf(timeline, 500, 0))).toBe(MINUTE_MS)
  expect(snapOf(stripOf(timeline, 400, 0))).toBe(5 * MINUTE_MS)
  expect(positionOf(segments, TEN + 7.6 * MINUTE_MS, 5 * MINUTE_MS)?.clockMs).toBe(10 * MINUTE_MS)
})

test('marks are as close as their words allow', () => {
  const minutes = (width: number) =>
    marksOn(stripOf(timeline, width, 0), 70).map((at) => (at - TEN) / MINUTE_MS)
  // 70 px of 500 are 21 min of 150: every half hour, and the last has its words’ room before the end.
  // Of 100 px they are 105 min: every two hours. Of 400 px 26 min: 120 + 26 still fit; of 350 px 30 min: just.
  // Of 340 px 30.9 min: every hour, and 120 + 30.9 no longer fit.
  expect(minutes(500)).toEqual([0, 30, 60, 90, 120])
  expect(minutes(400)).toEqual([0, 30, 60, 90, 120])
  expect(minutes(350)).toEqual([0, 30, 60, 90, 120])
  expect(minutes(340)).toEqual([0, 60])
  expect(minutes(100)).toEqual([0])
})
