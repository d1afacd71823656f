import { expect, test } from 'vitest'
import type { Plan, PlanSpan } from '../documents/plan.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, policy, smallMeeting, span } from '../testing/small-meeting.ts'
import { stintClock } from './stint-clock.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE

/** Minutes on the race clock of segment one. */
function drives(lineId: string, person: string, [from, to]: readonly [number, number]): PlanSpan {
  return span(lineId, person, { duty: 'controller', fromMs: from * MINUTE, toMs: to * MINUTE })
}

/** Solveig 0–5, Okello 5–10, Solveig 10–15, Tamsin 15–20. */
const rotation: Plan = {
  ...plan,
  spans: [
    drives('a', Solveig, [0, 5]),
    drives('b', Okello, [5, 10]),
    drives('c', Solveig, [10, 15]),
    drives('d', Tamsin, [15, 20]),
  ],
}

function running(withPlan: Plan | null = rotation): Pressing {
  const pressing = smallMeeting({ plan: withPlan, rules: [policy('segment', 'holds')] })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

function change(pressing: Pressing, minute: number, person: string): void {
  const moves = [{ person, duty: 'controller' as const }]
  pressing.press(GREEN + minute * MINUTE, 'handover.1', { moves })
}

/** Planned end in minutes after green, and the plan's line it comes from. */
function planned(pressing: Pressing, minute: number) {
  const stint = stintClock(pressing.state(), GREEN + minute * MINUTE)
  return [((stint?.plannedEndAt ?? 0) - GREEN) / MINUTE, stint?.span?.id]
}

test('L31: the first stint ends where the plan ends it', () => {
  expect(planned(running(), 2)).toEqual([5, 'a'])
})

test('L31: a stint begun early or late keeps the end of its span', () => {
  const early = running()
  change(early, 4, Okello)
  expect(planned(early, 4.5)).toEqual([10, 'b'])
  const late = running()
  change(late, 7, Okello)
  expect(planned(late, 8)).toEqual([10, 'b'])
})

test('L31: a stint that lasts too long keeps the end it had', () => {
  const stint = stintClock(running().state(), GREEN + 6 * MINUTE)
  expect(stint).toMatchObject({ plannedEndAt: GREEN + 5 * MINUTE, toGoMs: -MINUTE })
})

test('L31: who returns early drives to the end of the later span, not the first', () => {
  const pressing = running()
  change(pressing, 5, Okello)
  change(pressing, 9, Solveig)
  expect(planned(pressing, 9)).toEqual([15, 'c'])
})

test('L31: who stands in for another drives to that one’s end', () => {
  const pressing = running()
  change(pressing, 5, Imre)
  expect(planned(pressing, 6)).toEqual([10, undefined])
  // Tamsin's own span is 15 to 20: too far off to have been begun early at 6.
  change(pressing, 6, Tamsin)
  expect(planned(pressing, 6)).toEqual([10, undefined])
})

test('L31: spans of one driver without a gap are one stint', () => {
  const spans = [drives('a', Solveig, [0, 5]), drives('b', Solveig, [5, 12])]
  expect(planned(running({ ...plan, spans }), 2)).toEqual([12, 'a'])
})

test('L31: without a plan a stint ends with its segment', () => {
  const pressing = smallMeeting({ plan: null })
  change(pressing, -1, Solveig)
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const stint = stintClock(pressing.state(), GREEN + 2 * MINUTE)
  expect(stint).toMatchObject({
    since: GREEN,
    plannedEndAt: GREEN + 20 * MINUTE,
    lengthMs: 20 * MINUTE,
  })
})

test('L31: driven time counts by the policy for driving, not by the race clock', () => {
  const minutesDriven = (does: 'runs' | 'holds') => {
    const rules = [policy('segment', 'holds'), policy('driving', does)]
    const pressing = smallMeeting({ plan: rotation, rules })
    pressing.press(GREEN, 'green.1', { segment: 'one' })
    pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 3 * MINUTE, 'powerOn.1', {})
    return (stintClock(pressing.state(), GREEN + 4 * MINUTE)?.drivenMs ?? 0) / MINUTE
  }
  expect([minutesDriven('runs'), minutesDriven('holds')]).toEqual([4, 3])
})

test('between segments nobody has a stint', () => {
  const pressing = running()
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(stintClock(pressing.state(), GREEN + 21 * MINUTE)).toBeUndefined()
})
