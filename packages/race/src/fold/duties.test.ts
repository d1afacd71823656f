import { expect, test } from 'vitest'
import { dutiesNow } from '../clocks/duties.ts'
import { personName } from './names.ts'
import type { Move } from '../entry/scalars.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, problemKinds, type Pressing } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE

function handOver(pressing: Pressing, at: number, moves: Move[]): string {
  return pressing.press(at, 'handover.1', { moves })
}

/** Names with duties, of spans that are open. */
function onDuty(pressing: Pressing): Readonly<Record<string, string>> {
  const state = pressing.state()
  const duties = dutiesNow(state).map(({ person, duty, post }): readonly [string, string] => [
    personName(state, person),
    post === undefined ? duty : `${duty} ${post}`,
  ])
  return Object.fromEntries(duties)
}

test('L24: a handover moves people in order, and who is relieved has no duty left', () => {
  const pressing = smallMeeting({ plan: null })
  handOver(pressing, GREEN, [
    { person: Solveig, duty: 'controller' },
    { person: Imre, duty: 'post', post: '4' },
    { person: Tamsin, duty: 'wall' },
  ])
  handOver(pressing, GREEN + MINUTE, [
    { person: Tamsin, duty: 'post', post: '4' },
    { person: Okello, duty: 'controller' },
  ])
  expect(onDuty(pressing)).toEqual({ Tamsin: 'post 4', Okello: 'controller' })
  const { duties } = pressing.state().people
  const closed = duties.filter((span) => span.toAt === GREEN + MINUTE)
  expect(closed.map((span) => span.person)).toEqual([Solveig, Imre, Tamsin])
})

test('L24: two posts have a holder each', () => {
  const pressing = smallMeeting({ plan: null })
  handOver(pressing, GREEN, [{ person: Imre, duty: 'post', post: '4' }])
  handOver(pressing, GREEN + MINUTE, [{ person: Tamsin, duty: 'post', post: '7' }])
  expect(onDuty(pressing)).toEqual({ Imre: 'post 4', Tamsin: 'post 7' })
})

test('L24: two who go to a post nobody numbered in one handover stand there together', () => {
  const pressing = smallMeeting({ plan: null })
  handOver(pressing, GREEN, [
    { person: Imre, duty: 'post' },
    { person: Tamsin, duty: 'post' },
  ])
  expect(onDuty(pressing)).toEqual({ Imre: 'post', Tamsin: 'post' })
})

test('L24: duties stay open from segment to segment', () => {
  const pressing = smallMeeting({ plan: null })
  handOver(pressing, GREEN, [{ person: Solveig, duty: 'controller' }])
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  pressing.press(GREEN + 30 * MINUTE, 'green.1', { segment: 'two' })
  expect(onDuty(pressing)).toEqual({ Solveig: 'controller' })
  expect(pressing.state().people.duties).toHaveLength(1)
})

test('L24: a duty left, and one taken, close what was before', () => {
  const pressing = smallMeeting({ plan: null })
  pressing.press(GREEN, 'dutyTaken.1', { person: Imre, duty: 'bench' })
  pressing.press(GREEN + MINUTE, 'dutyTaken.1', { person: Imre, duty: 'wall' })
  pressing.press(GREEN + 2 * MINUTE, 'dutyLeft.1', { person: Imre })
  const { people, problems } = pressing.state()
  expect(people.duties.map(({ duty, fromAt, toAt }) => [duty, fromAt, toAt])).toEqual([
    ['bench', GREEN, GREEN + MINUTE],
    ['wall', GREEN + MINUTE, GREEN + 2 * MINUTE],
  ])
  expect(problems).toEqual([])
})

test('L15: duties that everybody already had are listed', () => {
  const pressing = smallMeeting({ plan: null })
  handOver(pressing, GREEN, [{ person: Solveig, duty: 'controller' }])
  handOver(pressing, GREEN + MINUTE, [{ person: Solveig, duty: 'controller' }])
  pressing.press(GREEN + 2 * MINUTE, 'dutyLeft.1', { person: Okello })
  const state = pressing.state()
  expect(problemKinds(state)).toEqual(['alreadySo', 'alreadySo'])
  expect(state.problems[1]?.sentence).toBe('Okello had no duty to leave.')
  expect(state.people.duties).toHaveLength(1)
})

test('L25: green puts the plan’s people on duty where nobody said who is', () => {
  const pressing = smallMeeting()
  const green = pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect(onDuty(pressing)).toEqual({ Solveig: 'controller', Imre: 'post 4', Tamsin: 'wall' })
  const { duties } = pressing.state().people
  expect(duties.every((span) => span.assumed && span.entry === green)).toBe(true)
})

test('L25: what was said stays, and who is away is not taken to be there', () => {
  const pressing = smallMeeting()
  handOver(pressing, GREEN - MINUTE, [{ person: Okello, duty: 'controller' }])
  pressing.press(GREEN - MINUTE, 'availability.1', { person: Imre, state: 'late' })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect(onDuty(pressing)).toEqual({ Okello: 'controller', Tamsin: 'wall' })
})
