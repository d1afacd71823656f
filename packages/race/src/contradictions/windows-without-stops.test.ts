import { expect, test } from 'vitest'
import { MINUTE, rule, said } from './testing/looking.ts'
import { windowsWithoutStops } from './windows-without-stops.ts'

const stops = (count: number | 'notKnownYet') => rule('mandatoryStops', { count, per: 'race' })
const windows = rule('stopWindows', { windows: [{ id: 'w', segment: 's1', fromMs: 0, toMs: 1 }] })
const rhythm = rule('stopRhythm', { everyMs: 60 * MINUTE, toleranceMs: 10 * MINUTE })

test('windows and a rhythm go with stops', () => {
  expect(said(windowsWithoutStops, [stops(1), windows, rhythm])).toEqual([])
  expect(said(windowsWithoutStops, [stops('notKnownYet'), windows, rhythm])).toEqual([])
  expect(said(windowsWithoutStops, [windows, rhythm])).toEqual([])
  expect(said(windowsWithoutStops, [stops(0), windows, rhythm])).toEqual([
    'There are stop windows but no stops. No stops are demanded. One of the two is wrong.',
    'There is a rhythm of stops but there are no stops. No stops are demanded. One of the two is wrong.',
  ])
})
