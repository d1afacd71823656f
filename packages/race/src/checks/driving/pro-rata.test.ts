import { expect, test } from 'vitest'
import type { Rule } from '../../rules/index.ts'
import { changedTo } from '../../testing/changed.ts'
import { GREEN } from '../../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../../testing/small-meeting.ts'
import { planTimeline, raceTimeline } from '../../timeline/timeline.ts'
import { judge } from '../judge.ts'

const limits: readonly Rule[] = [
  {
    ...{ id: 'time', kind: 'drivingTime' },
    value: { atLeastMs: 20 * MINUTE, atMostMs: 16 * MINUTE },
  },
  { id: 'spread', kind: 'drivingSpread', value: { atMostMs: 7 * MINUTE } },
]
const cut = (cuts: boolean | 'notKnownYet'): Rule => {
  return { id: 'cut', kind: 'cutProRata', value: { cut: cuts } }
}

/** Two segments of 20 min; the second is made 10 min long: 40 min become 30. */
function judged(rules: readonly Rule[], shorter = true) {
  const pressing = smallMeeting({ rules: [...limits, ...rules] })
  const length = { what: 'length', lengthMs: 10 * MINUTE } as const
  if (shorter) changedTo(pressing, GREEN - 10_000, { segment: 'two', ...length })
  const state = pressing.state()
  return judge(state, planTimeline(state, GREEN), GREEN).filter(({ rule }) => rule !== undefined)
}
const said = (rules: readonly Rule[], shorter?: boolean) =>
  new Map(judged(rules, shorter).map(({ id, limit }) => [id, limit / MINUTE]))

test('limits of driving time are cut in proportion where the rules say so', () => {
  // × 30 / 40: 20 → 15, 16 → 12, 7 → 5.25.
  expect([...said([cut(true)])]).toEqual([
    ['time:atLeast', 15],
    ['time:atMost', 12],
    ['spread:atMost', 5.25],
  ])
  const asWritten = [
    ['time:atLeast', 20],
    ['time:atMost', 16],
    ['spread:atMost', 7],
  ]
  expect([...said([cut(false)])]).toEqual(asWritten)
  expect([...said([])]).toEqual(asWritten)
  expect([...said([cut(true)], false)]).toEqual(asWritten)
})

test('while it is not known only what cannot cost a penalty is cut, and the sentence says so', () => {
  expect([...said([cut('notKnownYet')])]).toEqual([
    ['time:atLeast', 20],
    ['time:atMost', 12],
    ['spread:atMost', 5.25],
  ])
  const sentences = (rules: readonly Rule[]) =>
    judged(rules)
      .filter(({ id }) => id === 'time:atMost')
      .map(({ sentence }) => sentence)
  expect(sentences([cut(true)])).toEqual(['Solveig drives 0:10, at most 0:12, cut from 0:16.'])
  expect(sentences([cut('notKnownYet')])).toEqual([
    'Solveig drives 0:10, at most 0:12, cut from 0:16, assuming it is.',
  ])
})

test('thousandths are rounded to what cannot cost a penalty', () => {
  const odd: Rule = { id: 'odd', kind: 'drivingTime', value: { atLeastMs: 1_001, atMostMs: 1_001 } }
  const pressing = smallMeeting({ rules: [odd, cut(true)] })
  changedTo(pressing, GREEN - 10_000, { segment: 'two', what: 'length', lengthMs: 10 * MINUTE })
  const state = pressing.state()
  const found = judge(state, planTimeline(state, GREEN), GREEN).filter(({ rule }) => rule === 'odd')
  // 1001 × 3 / 4 = 750.75.
  expect([...new Set(found.map(({ limit }) => limit))]).toEqual([751, 750])
})

test('an abandoned segment counts as far as its race clock came, one never run not at all', () => {
  const pressing = smallMeeting()
  const shortened = (now: number) => raceTimeline(pressing.state(), now).shortened
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  expect(shortened(GREEN + MINUTE)).toBeUndefined()
  changedTo(pressing, GREEN + 12 * MINUTE, { what: 'abandoned' })
  // 12 of 20, and the 20 of the second.
  expect(shortened(GREEN + 13 * MINUTE)).toEqual({ fromMs: 40 * MINUTE, toMs: 32 * MINUTE })
  changedTo(pressing, GREEN + 14 * MINUTE, { segment: 'two', what: 'abandoned' })
  expect(shortened(GREEN + 15 * MINUTE)).toEqual({ fromMs: 40 * MINUTE, toMs: 12 * MINUTE })
})
