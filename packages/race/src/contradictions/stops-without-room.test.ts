import { expect, test } from 'vitest'
import { stopOfNothing, stopsWithoutRoom } from './stops-without-room.ts'
import { MINUTE, rule, said, segment } from './testing/looking.ts'

const stops = (per: 'segment' | 'race' = 'race') => rule('mandatoryStops', { count: 2, per })
const minimum = rule('stopMinimum', { minimumMs: MINUTE, from: 'stopped', to: 'leaving' })
const windows = (seconds: number) =>
  rule('stopWindows', {
    windows: [{ id: 'w', segment: 's1', fromMs: 0, toMs: seconds * 1_000 }],
  })

test('a window is as long as a stop', () => {
  expect(said(stopsWithoutRoom, [stops(), minimum, windows(60)])).toEqual([])
  expect(said(stopsWithoutRoom, [stops(), minimum, windows(59)])).toEqual([
    'No stop window is as long as a stop. The longest lasts 0:00:59, a stop at least 0:01.',
  ])
  expect(said(stopsWithoutRoom, [minimum, windows(59)])).toEqual([])
})

test('a closed period leaves some of a segment', () => {
  const closed = (minutes: number) =>
    rule('closedPeriod', { of: 'segment', firstMs: 30 * MINUTE, lastMs: minutes * MINUTE })
  expect(said(stopsWithoutRoom, [stops('segment'), closed(29)])).toEqual([])
  expect(said(stopsWithoutRoom, [stops('segment'), closed(30)])).toEqual([
    'No stop can be made in any segment. Segment 1 lasts 1:00, and 1:00 of it are closed for stops.',
  ])
  // The second segment is longer: stops of the race may be made there, those of each segment not.
  const programme = [segment('s1'), segment('s2', 90)]
  expect(said(stopsWithoutRoom, [stops('race'), closed(30)], { programme })).toEqual([])
  expect(said(stopsWithoutRoom, [stops('segment'), closed(30)], { programme })).toEqual([
    'No stop can be made in segment 1. Segment 1 lasts 1:00, and 1:00 of it are closed for stops.',
  ])
})

test('a closed period leaves some of the race', () => {
  const closed = (minutes: number) => rule('closedPeriod', { of: 'race', lastMs: minutes * MINUTE })
  expect(said(stopsWithoutRoom, [stops(), closed(119)], { programme: 2 })).toEqual([])
  expect(said(stopsWithoutRoom, [stops(), closed(120)], { programme: 2 })).toEqual([
    'No stop can be made in the whole race. The race lasts 2:00, and 2:00 of it are closed for stops.',
  ])
})

test('a minimum stop is more than nothing', () => {
  const nothing = rule('stopMinimum', { minimumMs: 0, from: 'stopped', to: 'leaving' })
  expect(said(stopOfNothing, [minimum])).toEqual([])
  expect(said(stopOfNothing, [nothing])).toHaveLength(1)
  const none = rule('mandatoryStops', { count: 0, per: 'race' })
  expect(said(stopOfNothing, [nothing, none])).toEqual([])
})
