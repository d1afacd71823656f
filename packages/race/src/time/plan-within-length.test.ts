import { expect, test } from 'vitest'
import { changedTo } from '../testing/changed.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN } from '../testing/pressing.ts'
import { adopt, MINUTE, plan, smallMeeting } from '../testing/small-meeting.ts'
import { planInForce } from './plan-in-force.ts'

const SAID = GREEN + 4 * MINUTE
const spans = (state: Parameters<typeof planInForce>[0]) =>
  planInForce(state, SAID + MINUTE)?.spans.map(({ id, fromMs, toMs }) => [
    ...[id, fromMs / MINUTE, toMs / MINUTE],
  ])

test('L47: what lies beyond the new end falls away, what reaches over it is cut', () => {
  const pressing = smallMeeting()
  // Solveig drives to 10 and Okello to 20: at 15 Okello is cut, at 8 there is only Solveig.
  changedTo(pressing, SAID, { what: 'length', lengthMs: 15 * MINUTE })
  expect(spans(pressing.state())).toEqual([
    ['s1', 0, 10],
    ['s2', 10, 15],
    ['m1', 0, 10],
    ['m2', 10, 15],
    ['w1', 0, 10],
    ['w2', 10, 15],
  ])
  changedTo(pressing, SAID + 1_000, { what: 'length', lengthMs: 8 * MINUTE })
  expect(spans(pressing.state())).toEqual([
    ['s1', 0, 8],
    ['m1', 0, 8],
    ['w1', 0, 8],
  ])
})

test('L47: whoever had a duty to the old end has it to the new one', () => {
  const pressing = smallMeeting()
  changedTo(pressing, SAID, { what: 'length', lengthMs: 8 * MINUTE })
  changedTo(pressing, SAID + 1_000, { what: 'length', lengthMs: 25 * MINUTE })
  // As if it had never been shorter.
  expect(spans(pressing.state())?.slice(0, 2)).toEqual([
    ['s1', 0, 10],
    ['s2', 10, 25],
  ])
})

test('L47: stops beyond the new end fall away', () => {
  const stops = [5, 12].map((minute) => {
    return { id: `p${minute}`, segment: 'one', atMs: minute * MINUTE, mandatory: true }
  })
  const pressing = smallMeeting({ plan: { ...plan, stops } })
  changedTo(pressing, SAID, { what: 'length', lengthMs: 12 * MINUTE })
  expect(planInForce(pressing.state(), SAID + MINUTE)?.stops).toEqual(stops.slice(0, 1))
})

test('L47: a version adopted later stands as it is, and its own changes count from there', () => {
  const pressing = smallMeeting()
  changedTo(pressing, SAID, { what: 'length', lengthMs: 15 * MINUTE })
  const later = {
    ...plan,
    spans: [
      {
        id: 'n1',
        person: PEOPLE.Imre,
        duty: 'controller',
        segment: 'one',
        fromMs: 0,
        toMs: 900_000,
      },
    ],
  }
  adopt(pressing, { document: 'plan', content: later, version: 2, at: SAID + 20_000, sha: 'b' })
  expect(spans(pressing.state())).toEqual([['n1', 0, 15]])
  changedTo(pressing, SAID + 40_000, { what: 'length', lengthMs: 18 * MINUTE })
  expect(spans(pressing.state())).toEqual([['n1', 0, 18]])
})
