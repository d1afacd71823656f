/** Stops and marshals as published rules ask for them. Sources stand beside each. */
import { expect, test } from 'vitest'
import { HOUR, inMinutes, judge, MINUTE, times, verdicts, type Turn } from './by-hand.ts'

// S2: Il Cavallino Sanremo, 24 h rules, tuttoslot.it/cavallinosanremo/pres24gioco.htm
test('S2: drivers change only with the car stopped in the pit lane', () => {
  const drives: readonly Turn[] = [
    ['Ana', 0, 30],
    ['Ben', 30, 110],
  ]
  const rule = { value: { where: 'stoppedInPitLane', order: 'notKnownYet' } } as const
  const race = { segments: [55, 55], betweenMinutes: 5, drives }
  expect(verdicts(judge({ ...race, stops: [{ at: 30 }] }, 'driverChange', rule))).toEqual(['kept'])
  expect(verdicts(judge({ ...race, stops: [{ at: 29 }] }, 'driverChange', rule))).toEqual([
    'broken',
  ])
  expect(verdicts(judge(race, 'driverChange', rule))).toEqual(['broken'])
})

// S5: as competitors report it, slotblog.net topic 101081
test('S5: the motor is changed in segment 12 or 13 of 24', () => {
  const changedAt = (at: number) =>
    verdicts(
      judge(
        // 24 × 10 min: segment 12 runs from 110 to 120, segment 13 from 120 to 130.
        { segments: times(24, () => 10), stops: [{ at, tasks: ['Motor change'] }] },
        'stopTask',
        { value: { task: 'motor change', times: 1, segments: ['s12', 's13'] } },
      ),
    )
  expect(changedAt(115)).toEqual(['kept'])
  expect(changedAt(125)).toEqual(['kept'])
  expect(changedAt(105)).toEqual(['broken'])
  expect(changedAt(135)).toEqual(['broken'])
})

// F1: Motorsport UK, National Competition Rules 2026, pages 365 and 401
test('F1: a marshal’s shift lasts six hours at most', () => {
  const shift = (minutes: number) =>
    inMinutes(
      judge({ segments: [1_440], posts: [['Ana', 0, minutes]] }, 'marshalShift', {
        value: { atMostMs: 6 * HOUR },
      }),
    )
  expect(shift(360)).toEqual([['kept', 360, 0]])
  expect(shift(361)).toEqual([['broken', 361, -1]])
})

// K2: 24h Leihkart 2018, kartshop-ampfing.de
const rhythm = { value: { everyMs: 60 * MINUTE, toleranceMs: 10 * MINUTE } }

test('K2: 23 windows of 60n ± 10 min, n = 1 … 23', () => {
  const stops = (off: number) => times(23, (index) => ({ at: 60 * (index + 1) + off }))
  const judged = (of: readonly { readonly at: number }[]) =>
    inMinutes(judge({ segments: [1_440], stops: of }, 'stopRhythm', rhythm))
  expect(judged(stops(0))).toEqual([['kept', 0, 10]])
  expect(judged(stops(-10))).toEqual([['kept', 10, 0]])
  expect(judged(stops(10))).toEqual([['kept', 10, 0]])
  expect(judged(stops(11))).toEqual(times(23, () => ['broken', 0, -1]))
  expect(judged(stops(0).slice(1))).toEqual([['broken', 0, -1]])
  expect(judged([...stops(0), { at: 130 }])).toEqual([['broken', 2, -1]])
})

test('K2: the kart stands a minute at least', () => {
  const stood = (lastedSeconds: number) =>
    judge({ segments: [1_440], stops: [{ at: 60, lastedSeconds }] }, 'stopMinimum', {
      value: { minimumMs: MINUTE, from: 'stopped', to: 'leaving' },
    }).map(({ verdict, margin }) => [verdict, margin / 1_000])
  expect(stood(60)).toEqual([['kept', 0]])
  expect(stood(59)).toEqual([['broken', -1]])
})

// K4: Clone enduro 2013, georgiasprintkarting.net
test('K4: two stops of 60 s in an hour, from full stop to leaving', () => {
  const race = (...lasted: readonly number[]) => ({
    segments: [60],
    stops: lasted.map((lastedSeconds, index) => ({ at: 20 + 20 * index, lastedSeconds })),
  })
  const owed = { value: { count: 2, per: 'race' } } as const
  expect(inMinutes(judge(race(60, 60), 'mandatoryStops', owed))).toEqual([['kept', 2, 0]])
  expect(inMinutes(judge(race(60), 'mandatoryStops', owed))).toEqual([['broken', 1, -1]])
  const minimum = { value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' } } as const
  expect(verdicts(judge(race(60, 60), 'stopMinimum', minimum))).toEqual(['kept'])
  // Left a second early: that stop alone.
  expect(judge(race(60, 59), 'stopMinimum', minimum)).toMatchObject([
    { verdict: 'broken', value: 59_000, margin: -1_000, stops: ['stop-1'] },
  ])
})
