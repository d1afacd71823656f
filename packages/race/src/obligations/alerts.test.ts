import { expect, test } from 'vitest'
import type { Plan } from '../documents/plan.ts'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, plan, smallMeeting, span } from '../testing/small-meeting.ts'
import { alertsBetween } from './alerts.ts'
import { obligations } from './obligations.ts'

const window: Rule = {
  id: 'when',
  kind: 'stopWindows',
  value: { windows: [{ id: 'w', segment: 'one', fromMs: 300_000, toMs: 900_000 }] },
}

function running(rules: readonly Rule[] = [], withPlan: Plan = plan): Pressing {
  const pressing = smallMeeting({ rules, plan: withPlan })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

test('sound at the captain’s moments where he chose some, GO at its own', () => {
  const alertsMs = [0, 180_000, 180_000]
  const withMoments = { ...plan, captain: { ...plan.captain, alertsMs } }
  const minimum: Rule = {
    id: 'least',
    kind: 'stopMinimum',
    value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' },
  }
  const owed: Rule = { id: 'owed', kind: 'mandatoryStops', value: { count: 1, per: 'race' } }
  const pressing = running([minimum, owed], withMoments)
  pressing.press(GREEN + MINUTE, 'stopIn.1', { moment: 'stopped' })
  const list = obligations(pressing.state(), GREEN + MINUTE)
  const heard = alertsBetween(list, GREEN, GREEN + 20 * MINUTE)
  const of = (kind: string) =>
    heard.filter(({ obligation }) => obligation.kind === kind).map((one) => one.thresholdMs)
  expect([of('segmentEnd'), of('stopGo')]).toEqual([
    [180_000, 0],
    [10_000, 0],
  ])
})

test('none at all where the captain’s list is empty', () => {
  const captain = { ...plan.captain, alertsMs: [] }
  const list = obligations(running([], { ...plan, captain }).state(), GREEN + MINUTE)
  expect(alertsBetween(list, GREEN, GREEN + 20 * MINUTE)).toEqual([])
})

test('sound when a threshold is crossed, once, in order', () => {
  const list = obligations(running().state(), GREEN + MINUTE)
  const heard = alertsBetween(list, GREEN + 8 * MINUTE, GREEN + 9 * MINUTE)
  expect(new Set(heard.map(({ thresholdMs }) => thresholdMs))).toEqual(new Set([MINUTE]))
  expect(alertsBetween(list, GREEN + 9 * MINUTE, GREEN + 9 * MINUTE + 1)).toEqual([])
  const both = alertsBetween(list, GREEN + 7 * MINUTE, GREEN + 9 * MINUTE)
  expect(both.map(({ thresholdMs }) => thresholdMs)).toEqual(
    [...both.map(({ thresholdMs }) => thresholdMs)].sort((a, b) => b - a),
  )
})

test('L33: a new plan with the same lines keeps their ids', () => {
  const pressing = running([window])
  const ids = () =>
    alertsBetween(
      obligations(pressing.state(), GREEN + 3 * MINUTE),
      GREEN,
      GREEN + 20 * MINUTE,
    ).map(({ id }) => id)
  const before = ids()
  const shorter = {
    ...span('z', PEOPLE.Solveig, { duty: 'bench', fromMs: 1, toMs: 2 }),
    segment: 'two',
  }
  const content = { ...plan, spans: [shorter, ...[...plan.spans].reverse()] }
  adopt(pressing, { document: 'plan', content, version: 2, at: GREEN + 2 * MINUTE })
  expect(ids()).toEqual(expect.arrayContaining(before))
  expect(before).toContain('nextDuty:s2@60000')
  expect(before).toContain('stopWindowOpens:w@120000')
})
