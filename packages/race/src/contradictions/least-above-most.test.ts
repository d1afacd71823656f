import { expect, test } from 'vitest'
import { leastAboveMost } from './least-above-most.ts'
import { HOUR, looking, MINUTE, rule, said } from './testing/looking.ts'

test('a minimum above a maximum in one rule; the same as it is not', () => {
  const time = (least: number, most: number) =>
    rule('drivingTime', { atLeastMs: least * HOUR, atMostMs: most * HOUR })
  expect(said(leastAboveMost, [time(3, 4)])).toEqual([])
  expect(said(leastAboveMost, [time(4, 4)])).toEqual([])
  expect(said(leastAboveMost, [time(4, 3)])).toEqual([
    'Driving time: at least 4:00, and at most 3:00. Nothing can be both.',
  ])
})

test('in two rules, where some person is of both', () => {
  const least = (who?: string) => rule('drivingShare', { who, atLeast: 250 }, 'low')
  const most = (who?: string) => rule('drivingShare', { who, atMost: 200 }, 'high')
  expect(looking(leastAboveMost, [least(), most('novice')], {})).toEqual([
    {
      id: 'leastAboveMost:low:high',
      rules: ['low', 'high'],
      what: 'Share of the race: at least 25 %, and at most 20 %.',
      why: 'Two rules say so, and nothing can be both.',
    },
  ])
  expect(said(leastAboveMost, [least('Novice'), most('novice')])).toHaveLength(1)
  expect(said(leastAboveMost, [least('expert'), most('novice')])).toEqual([])
})

test('changes are not stints, and blocks hold no more than they are long', () => {
  const changes = rule('numberOfChanges', { of: 'changes', atLeast: 5 }, 'a')
  const number = (of: 'changes' | 'stints') => rule('numberOfChanges', { of, atMost: 4 }, 'b')
  expect(said(leastAboveMost, [changes, number('stints')])).toEqual([])
  expect(said(leastAboveMost, [changes, number('changes')])).toHaveLength(1)
  const block = (minutes: number) =>
    rule('blockDriving', { blockMs: 20 * MINUTE, atLeastMs: minutes * MINUTE })
  expect(said(leastAboveMost, [block(20)])).toEqual([])
  expect(said(leastAboveMost, [block(21)])).toEqual([
    'In fixed blocks: at least 0:21, and at most 0:20. Nothing can be both.',
  ])
})

test('what is not known yet contradicts nothing', () => {
  const value = { atLeast: 4, atMost: 'notKnownYet' } as const
  expect(said(leastAboveMost, [rule('stintsEach', value)])).toEqual([])
})
