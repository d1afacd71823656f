import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, policy, SECOND, smallMeeting } from '../testing/small-meeting.ts'
import { madeStops } from '../timeline/stops.ts'
import { leavingNow, stopVerdict } from './stop-verdict.ts'

const owed: Rule = { id: 'owed', kind: 'mandatoryStops', value: { count: 1, per: 'segment' } }
const minimum: Rule = {
  id: 'least',
  kind: 'stopMinimum',
  value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' },
}
const early: Rule = {
  id: 'early',
  kind: 'penalty',
  value: { for: 'stop left EARLY', is: 'seconds', amount: 2, per: 'secondShort', scope: 'race' },
  clause: '§ 9.2',
}

interface Visit {
  readonly rules?: readonly Rule[]
  /** Seconds after the car stopped. */
  readonly leftAfter?: number
  readonly callFrom?: number
  readonly callTo?: number
}

function visit({ rules = [early], leftAfter, callFrom, callTo }: Visit) {
  const pressing = smallMeeting({ rules: [owed, minimum, ...rules] })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const stop = pressing.press(GREEN + MINUTE, 'stopIn.1', { moment: 'stopped' })
  const after = (second: number) => GREEN + MINUTE + second * SECOND
  if (callFrom !== undefined) pressing.press(after(callFrom), 'trackCall.1', {})
  if (callTo !== undefined) pressing.press(after(callTo), 'powerOn.1', {})
  if (leftAfter !== undefined) pressing.press(after(leftAfter), 'stopOut.1', { moment: 'leaving' })
  return { pressing, stop, verdict: verdictOf(pressing, stop) }
}

function verdictOf(pressing: Pressing, stop: string) {
  return stopVerdict(pressing.state(), stop)
}

test('L40: left late or on the second it costs nothing', () => {
  expect(visit({ leftAfter: 63.5 }).verdict).toMatchObject({
    ...{ verdict: 'late', lastedMs: 63_500, minimumMs: 60_000, byMs: 3_500, costs: [] },
    ...{ from: 'stopped', to: 'leaving', assumed: false, missing: [] },
  })
  expect(visit({ leftAfter: 60 }).verdict).toMatchObject({ verdict: 'exact', byMs: 0, costs: [] })
})

test('L40: left early it costs what each rule for it says, a second begun whole', () => {
  const other: Rule = {
    id: 'also',
    kind: 'penalty',
    value: { for: 'Stop left early', is: 'stopAndGo', per: 'occurrence', scope: 'race' },
  }
  const laps: Rule = {
    id: 'laps',
    kind: 'penalty',
    value: { for: 'Stop left early', is: 'laps', amount: 3, per: 'occurrence', scope: 'race' },
  }
  const { verdict } = visit({ rules: [early, other, laps], leftAfter: 56.8 })
  expect(verdict).toMatchObject({ verdict: 'early', lastedMs: 56_800, byMs: -3_200 })
  expect(verdict?.costs).toEqual([
    // 3.2 s short are 4 begun, at 2 s each.
    {
      ...{ rule: 'early', clause: '§ 9.2', is: 'seconds', per: 'secondShort', scope: 'race' },
      ...{ amount: 2, total: 8 },
    },
    { rule: 'also', is: 'stopAndGo', per: 'occurrence', scope: 'race' },
    { rule: 'laps', is: 'laps', per: 'occurrence', scope: 'race', amount: 3, total: 3 },
  ])
})

test('L40: what held is not counted', () => {
  const rules = [early, policy('stopMinimum', 'holds')]
  const { verdict } = visit({ rules, callFrom: 20, callTo: 50, leftAfter: 80 })
  // 80 − 30.
  expect(verdict).toMatchObject({ lastedMs: 50_000, heldMs: 30_000, byMs: -10_000 })
  expect(verdict?.costs[0]?.total).toBe(20)
})

test('L39: a minimum that started again counts from the end of the call', () => {
  const rules = [early, policy('stopMinimum', 'startsAgain')]
  const { verdict, pressing } = visit({ rules, callFrom: 20, callTo: 50, leftAfter: 100 })
  // 100 − 50.
  expect(verdict).toMatchObject({ verdict: 'early', lastedMs: 50_000, byMs: -10_000 })
  // The checks judge the same.
  expect(madeStops(pressing.state(), GREEN + 10 * MINUTE)[0]?.lastedMs).toBe(50_000)
  const during = visit({ rules, callFrom: 20, leftAfter: 90 }).verdict
  expect(during).toMatchObject({ lastedMs: 0, byMs: -60_000 })
})

test('L40: without one of the two moments nothing is said', () => {
  expect(visit({}).verdict).toMatchObject({
    verdict: 'cannotTell',
    missing: ['leaving'],
    costs: [],
  })
  const { pressing, stop } = visit({})
  pressing.press(GREEN + 2 * MINUTE, 'stopOut.1', { moment: 'pitExit' })
  expect(verdictOf(pressing, stop)).toMatchObject({ verdict: 'cannotTell', missing: ['leaving'] })
})

test('a stop that is not mandatory, or has no minimum, is neither', () => {
  const { pressing } = visit({ leftAfter: 60 })
  const second = pressing.press(GREEN + 5 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 5 * MINUTE + SECOND, 'stopOut.1', { moment: 'leaving' })
  expect(verdictOf(pressing, second)).toMatchObject({ verdict: 'noMinimum', lastedMs: 1_000 })
  expect(verdictOf(pressing, 'nothing')).toBeUndefined()
})

/** So many seconds after the car stopped. */
function leavingAfter(second: number, of: Visit) {
  return leavingNow(visit(of).pressing.state(), GREEN + MINUTE + second * SECOND)
}

test('L40: what leaving now costs is told while the car is in, and is what it comes to', () => {
  // 60 − 48.2 = 11.8 s short: 12 begun, at 2 s each.
  expect(leavingAfter(48.2, {})).toEqual({
    shortMs: 11_800,
    costs: [
      {
        ...{ rule: 'early', clause: '§ 9.2', is: 'seconds', per: 'secondShort', scope: 'race' },
        ...{ amount: 2, total: 24 },
      },
    ],
  })
  const { verdict } = visit({ leftAfter: 48.2 })
  expect(verdict).toMatchObject({ byMs: -11_800, costs: [{ total: 24 }] })
  expect(leavingAfter(48.2, { rules: [] })).toEqual({ shortMs: 11_800, costs: [] })
})

test('L40: while the minimum stands the same is missing, and all of it where it starts again', () => {
  const held = { callFrom: 20, rules: [early, policy('stopMinimum', 'holds')] }
  // 60 − 20.
  expect(leavingAfter(25, held)?.shortMs).toBe(40_000)
  expect(leavingAfter(50, held)?.shortMs).toBe(40_000)
  const again = { callFrom: 20, rules: [early, policy('stopMinimum', 'startsAgain')] }
  expect(leavingAfter(50, again)).toMatchObject({ shortMs: 60_000, costs: [{ total: 120 }] })
})

test('nothing is said of leaving now where it breaks no minimum', () => {
  expect(leavingAfter(60, {})).toBeUndefined()
  expect(leavingAfter(30, { leftAfter: 20 })).toBeUndefined()
  const { pressing } = visit({ leftAfter: 60 })
  pressing.press(GREEN + 5 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  // The one that was owed is made.
  expect(leavingNow(pressing.state(), GREEN + 5 * MINUTE + SECOND)).toBeUndefined()
  const entered = smallMeeting({ rules: [owed, minimum, early] })
  entered.press(GREEN, 'green.1', { segment: 'one' })
  entered.press(GREEN + MINUTE, 'stopIn.1', { moment: 'pitEntry' })
  // It counts from stopped, which is still to come.
  expect(leavingNow(entered.state(), GREEN + MINUTE + SECOND)).toBeUndefined()
})
