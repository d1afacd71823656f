import { expect, test } from 'vitest'
import type { Regulations } from '../documents/rules.ts'
import { GREEN, Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, regulations, smallMeeting } from '../testing/small-meeting.ts'
import { segmentsOf } from './programme.ts'

const shape = (pressing: Pressing, now: number) =>
  segmentsOf(pressing.state(), now).map(({ state, startsAt, endsAt }) => [
    state,
    (startsAt - GREEN) / MINUTE,
    endsAt === undefined ? undefined : (endsAt - GREEN) / MINUTE,
  ])

function planned(plannedAt: Readonly<Record<string, number>>): Pressing {
  const programme = regulations().programme.map((item) => {
    const minutes = plannedAt[item.id]
    return minutes === undefined ? item : { ...item, plannedAt: GREEN + minutes * MINUTE }
  })
  return withProgramme(programme)
}

function withProgramme(programme: Regulations['programme']): Pressing {
  const pressing = new Pressing()
  adopt(pressing, { document: 'rules', content: { ...regulations(), programme } })
  return pressing
}

test('without named times everything follows from now: 20 minutes, 10 of break, 20', () => {
  expect(shape(smallMeeting(), GREEN)).toEqual([
    ['ahead', 0, 20],
    ['ahead', 30, 50],
  ])
})

test('the organiser’s times count while they are ahead, and what waits for green slides', () => {
  const pressing = planned({ one: 5, two: 40 })
  expect(shape(pressing, GREEN)).toEqual([
    ['ahead', 5, 25],
    ['ahead', 40, 60],
  ])
  // At 15 the first should have begun at 5: it would end at 35, and the break not before 45.
  expect(shape(pressing, GREEN + 15 * MINUTE)).toEqual([
    ['ahead', 15, 35],
    ['ahead', 45, 65],
  ])
})

test('a run counts as it was, and the break from its end', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 22 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(shape(pressing, GREEN + 25 * MINUTE)).toEqual([
    ['over', 0, 22],
    ['ahead', 32, 52],
  ])
})

test('a programme that moved moves what is ahead, named times and reckoned ones', () => {
  const named = planned({ one: 0, two: 40 })
  named.press(GREEN, 'green.1', { segment: 'one' })
  named.press(GREEN + MINUTE, 'programmeMoved.1', { fromItem: 'two', byMs: -5 * MINUTE })
  expect(shape(named, GREEN + 2 * MINUTE)[1]).toEqual(['ahead', 35, 55])
  const reckoned = smallMeeting()
  reckoned.press(GREEN, 'green.1', { segment: 'one' })
  reckoned.press(GREEN + MINUTE, 'programmeMoved.1', { fromItem: 'rest', byMs: 5 * MINUTE })
  // 20 + 5 + 10 of break.
  expect(shape(reckoned, GREEN + 2 * MINUTE)[1]).toEqual(['ahead', 35, 55])
})

test('a segment counted in laps has no end of its own', () => {
  const pressing = withProgramme([
    { id: 'laps', kind: 'segment', length: { by: 'laps', laps: 300 } },
    { id: 'two', kind: 'segment', length: { by: 'time', lengthMs: 10 * MINUTE } },
  ])
  expect(shape(pressing, GREEN)).toEqual([
    ['ahead', 0, undefined],
    ['ahead', 0, 10],
  ])
})

test('without rules there is no programme', () => {
  expect(segmentsOf(new Pressing().state(), GREEN)).toEqual([])
})

test('a start twenty minutes late takes everything after it along', () => {
  const pressing = planned({ one: 0, two: 40 })
  pressing.press(GREEN - 5 * MINUTE, 'programmeMoved.1', { fromItem: 'one', byMs: 20 * MINUTE })
  expect(shape(pressing, GREEN - 4 * MINUTE)).toEqual([
    ['ahead', 20, 40],
    ['ahead', 60, 80],
  ])
})

test('a lane change without a length lasts as long as the rules say', () => {
  const change = { id: 'change', kind: 'laneChange', value: { lengthMs: 300_000 } } as const
  const programme = regulations().programme.map((item) =>
    item.id === 'rest' ? { id: 'rest', kind: 'laneChange' as const } : item,
  )
  const pressing = new Pressing()
  adopt(pressing, { document: 'rules', content: { ...regulations([change]), programme } })
  // Twenty minutes, five of lane change, twenty.
  expect(shape(pressing, GREEN)).toEqual([
    ['ahead', 0, 20],
    ['ahead', 25, 45],
  ])
})

test('a segment to be run again follows its first running, and what is said of its time counts from there', () => {
  const pressing = planned({ one: 0 })
  pressing.press(GREEN - MINUTE, 'programmeMoved.1', { fromItem: 'one', byMs: 5 * MINUTE })
  pressing.press(GREEN + 5 * MINUTE, 'green.1', { segment: 'one' })
  const change = { what: 'runAgain', lapsCount: false, drivingCounts: false } as const
  pressing.press(GREEN + 12 * MINUTE, 'segmentChanged.1', { segment: 'one', change })
  pressing.press(GREEN + 13 * MINUTE, 'programmeMoved.1', { fromItem: 'one', byMs: 10 * MINUTE })
  // It ended at 12, ten minutes later is 22; twenty of running and ten of break.
  expect(shape(pressing, GREEN + 14 * MINUTE)).toEqual([
    ['ahead', 22, 42],
    ['ahead', 52, 72],
  ])
})
