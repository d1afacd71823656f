import { expect, test } from 'vitest'
import { saidTwice } from './said-twice.ts'
import { looking, MINUTE, rule, said } from './testing/looking.ts'

const clock = (
  under: 'trackCall' | 'redFlag',
  does: 'runs' | 'holds' | 'notKnownYet',
  id: string,
) => rule('clockPolicy', { clock: 'segment', under, does }, id)

test('one clock does one thing under one interruption', () => {
  expect(
    said(saidTwice, [clock('trackCall', 'runs', 'a'), clock('redFlag', 'holds', 'b')]),
  ).toEqual([])
  expect(
    said(saidTwice, [clock('trackCall', 'runs', 'a'), clock('trackCall', 'runs', 'b')]),
  ).toEqual([])
  const unknown = [clock('trackCall', 'runs', 'a'), clock('trackCall', 'notKnownYet', 'b')]
  expect(said(saidTwice, unknown)).toEqual([])
  const both = [clock('trackCall', 'runs', 'a'), clock('trackCall', 'holds', 'b')]
  expect(looking(saidTwice, both, {})).toMatchObject([
    {
      id: 'saidTwice:a:b',
      rules: ['a', 'b'],
      why: 'Only one of them can hold. Until one goes, the first counts.',
    },
  ])
})

test('work in one phase is allowed or not', () => {
  const work = (during: 'green' | 'break', allowed: boolean, id: string) =>
    rule('workAllowed', { during, allowed }, id)
  expect(said(saidTwice, [work('green', true, 'a'), work('break', false, 'b')])).toEqual([])
  expect(said(saidTwice, [work('green', true, 'a'), work('green', false, 'b')])).toHaveLength(1)
})

test('there is one minimum stop, and two limits are no contradiction', () => {
  const minimum = (minutes: number, id: string) =>
    rule('stopMinimum', { minimumMs: minutes * MINUTE, from: 'stopped', to: 'notKnownYet' }, id)
  expect(said(saidTwice, [minimum(1, 'a'), minimum(2, 'b')])).toHaveLength(1)
  const most = (minutes: number, id: string) =>
    rule('continuousDriving', { atMostMs: minutes * MINUTE }, id)
  expect(said(saidTwice, [most(60, 'a'), most(80, 'b')])).toEqual([])
})

test('a category is the same without regard to capitals', () => {
  const first = (who: string, may: 'must' | 'mayNot', id: string) =>
    rule('endDriver', { which: 'first', who, may }, id)
  expect(said(saidTwice, [first('Novice', 'must', 'a'), first('novice', 'mayNot', 'b')])).toEqual([
    'First and last driver (first, Novice): two rules say different things. Only one of them can hold. Until one goes, the first counts.',
  ])
})
