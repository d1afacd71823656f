import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import type { Planned } from './answer/answer.ts'
import { compare } from './answer/compare.ts'
import { expected } from './answer/expected.ts'
import { plan } from './plan.ts'
import type { Problem, Span } from './problem/problem.ts'
import { changedSpans, replan } from './replan.ts'
import type { Rule } from './rules/index.ts'
import { driver, GREEN_AT, minutes, problem, segment } from './testing/make.ts'
import { smallProblem } from './testing/small.ts'
import { costOf } from './without.ts'

const solver = await loadHighs()
const ada = driver('ada', { lapMs: 9_000 })
const ben = driver('ben')
const people = [ada, ben]

function planned(of: Problem): Planned {
  const answer = plan(of, { solver })
  if (answer.kind !== 'planned') throw new Error(`It is ${answer.kind}.`)
  return answer
}

function drives(person: string, from: number, to: number): Span {
  return { person, duty: 'controller', segment: 'one', fromMs: minutes(from), toMs: minutes(to) }
}

describe('plan', () => {
  it('lets the quicker one drive where nothing stands against it', () => {
    // 60 min ÷ 9 s = 400 laps.
    expect(planned(problem({ people }))).toMatchObject({
      ...{ proof: 'best', worthLaps: 400, gapLaps: 0 },
      spans: [drives('ada', 0, 60)],
    })
  })

  it('gives up laps for equal shares as the captain weighs them', () => {
    // Half an hour each costs 20 laps; an hour for one is twice half an hour from the share.
    const balance = (lapsPerHour: number) => ({ balance: { toleranceMs: 0, lapsPerHour } })
    expect(planned(problem({ people, ...balance(10) })).expected.laps).toBe(400)
    expect(planned(problem({ people, ...balance(30) })).expected.laps).toBe(380)
  })

  it('counts tiredness, finding in, lanes and stops', () => {
    const pace = {
      ...{ lapMs: 9_000, knownToMs: 90, slowerPerHourMs: 1_000, findingInLaps: 2 },
      laneAddsMs: { 1: 500 },
    }
    const one = segment(2, 30, { lane: 1 })
    const answer = planned(
      problem({
        people: [driver('ada', { pace })],
        segments: [one],
        stop: { standsMs: 0, costsMs: 60_000 },
      }),
    )
    // 30 min at 9.5 + 0.25 s: 184.6154; 29 min at 9.5 + 0.75 s: 169.7561; less 2.
    expect(answer.expected.laps).toBeCloseTo(352.3715, 3)
    // A lap time 1 ms off costs 184.6154 ÷ 9750 + 169.7561 ÷ 10250 = 0.0354964 laps; × 90 × 1.28155 = 4.0941.
    expect(answer.expected.toLaps - answer.expected.laps).toBeCloseTo(4.0941, 3)
  })

  it('keeps a wish where it is worth more than what it costs', () => {
    const wish = (laps: number) =>
      problem({
        people,
        wishes: [{ id: 'w', kind: 'notAtEnd', person: 'ada', which: 'first', laps }],
      })
    // Ben drives the first quarter: 10 laps.
    expect(planned(wish(9))).toMatchObject({ worthLaps: 391, spans: [drives('ada', 0, 60)] })
    expect(planned(wish(11))).toMatchObject({ worthLaps: 390 })
  })

  it.each([
    [
      'not between',
      {
        kind: 'notBetween',
        duties: ['controller'],
        fromAt: GREEN_AT,
        toAt: GREEN_AT + minutes(20),
      },
      380,
    ],
    [
      'a block off',
      {
        kind: 'blockOff',
        lengthMs: minutes(15),
        fromAt: GREEN_AT + minutes(15),
        toAt: GREEN_AT + minutes(40),
      },
      390,
    ],
    ['no more than', { kind: 'noMoreThan', atMostMs: minutes(50) }, 390],
    // Whoever takes over from Ben only is either first all the time or never.
    ['only after ben', { kind: 'follows', other: 'ben', where: 'after' }, 400],
    ['beside ben at the wall', { kind: 'beside', other: 'ben' }, 360],
  ] as const)('knows the wish: %s', (_, wish, laps) => {
    const wishes = [{ id: 'w', person: 'ada', laps: 1_000, ...wish }]
    expect(planned(problem({ people, wishes })).worthLaps).toBeCloseTo(laps, 6)
  })

  it('keeps what is pinned', () => {
    const at = { segment: 'one', fromMs: minutes(15), toMs: minutes(30) }
    const span = { id: 'p', kind: 'span', person: 'ben', duty: 'controller', ...at } as const
    const off = { id: 'q', kind: 'off', person: 'ada', ...at } as const
    expect(planned(problem({ people, pins: [span] })).worthLaps).toBe(390)
    expect(planned(problem({ people, pins: [off] })).worthLaps).toBe(390)
    const segments = [segment(1, 60)]
    const stop = { id: 's', kind: 'stop', segment: 'one', atMs: minutes(20) } as const
    expect(planned(problem({ people, segments, pins: [stop] })).stops).toEqual([
      { segment: 'one', atMs: minutes(20), mandatory: true },
    ])
  })

  it('says what is wrong instead of trying', () => {
    const kinds = (of: Partial<Problem>) => {
      const answer = plan(problem(of), { solver })
      return answer.kind === 'faulty' ? answer.faults.map(({ kind }) => kind) : answer.kind
    }
    expect(kinds({ segments: [] })).toEqual(['noTime'])
    expect(kinds({ segments: [segment(1, 0)] })).toEqual(['noTime'])
    expect(kinds({ people: [] })).toEqual(['nobodyDrives'])
    expect(kinds({ people: [driver('ada', { lapMs: Number.NaN })] })).toEqual(['badNumber'])
    expect(kinds({ people: [driver('ada', { lapMs: 0 })] })).toEqual(['badNumber'])
    expect(
      kinds({ people: [driver('ada', { there: [{ fromAt: GREEN_AT + minutes(20) }] })] }),
    ).toEqual(['nobodyThere'])
    expect(
      kinds({ rules: [{ id: 'r', kind: 'endDriver', which: 'first', who: 'novice', must: true }] }),
    ).toEqual(['aboutNobody'])
    expect(kinds({ segments: [segment(1, 60, { gridMs: 1 })] })).toEqual(['tooMuch'])
    const pin = { id: 'p', kind: 'stop', segment: 'gone', atMs: 5 } as const
    expect(kinds({ pins: [pin, pin] })).toEqual(['idTwice', 'nowhere', 'nowhere'])
  })
})

describe('with a past', () => {
  const past = { untilMs: minutes(30), spans: [drives('ada', 0, 15), drives('ben', 15, 30)] }
  const most: Rule = { id: 'most', kind: 'drivingTime', atMostMs: minutes(30) }

  it('plans what is still to come, and counts what was driven', () => {
    const answer = planned(problem({ people, segments: [segment(4, 15, { past })], rules: [most] }))
    // A quarter is left to each: 100 + 90.
    expect(answer.worthLaps).toBe(190)
    expect(answer.spans.every(({ fromMs }) => fromMs >= minutes(30))).toBe(true)
  })

  it('asks no more of who has driven too much than to stop', () => {
    const long = { untilMs: minutes(45), spans: [drives('ada', 0, 45)] }
    const rules: readonly Rule[] = [
      most,
      { id: 'c', kind: 'continuousDriving', atMostMs: minutes(30) },
    ]
    expect(
      planned(problem({ people, segments: [segment(4, 15, { past: long })], rules })).spans,
    ).toEqual([drives('ben', 45, 60)])
  })

  it('is worked out again with as few changes as can be, or for the most laps', () => {
    const before = [
      drives('ada', 0, 15),
      drives('ben', 15, 30),
      drives('ben', 30, 45),
      drives('ada', 45, 60),
    ]
    const of = problem({
      people: [ada, ben, driver('cyd', { lapMs: 9_500 })],
      segments: [segment(4, 15, { past: { untilMs: minutes(30), spans: before.slice(0, 2) } })],
      rules: [{ id: 'turns', kind: 'continuousDriving', atMostMs: minutes(15) }],
    })
    const gone = { ...of, people: of.people.filter(({ id }) => id !== 'ben') }
    const previous = { spans: before, sameWithinMs: 0 }
    const { fewestChanges, mostLaps } = replan(gone, previous, { solver })
    if (fewestChanges.kind !== 'planned' || mostLaps.kind !== 'planned') throw new Error('No plan.')
    expect(changedSpans(gone, fewestChanges, previous)).toEqual([drives('cyd', 30, 45)])
    expect(mostLaps.expected.laps).toBeGreaterThanOrEqual(fewestChanges.expected.laps)
  })
})

describe('what it is worth', () => {
  it('prices a rule by taking it away', () => {
    const of = problem({
      people,
      rules: [{ id: 'most', kind: 'drivingTime', atMostMs: minutes(30) }],
    })
    const costs = costOf(of, { ids: ['most'], kept: planned(of) }, { solver })
    expect(costs.laps?.map(Math.round)).toEqual([20, 20])
  })

  it('finds no real difference within what the paces are known to, and the fairer one', () => {
    const side = (spans: readonly Span[], knownToMs: number) => {
      const pace = { lapMs: 9_950, knownToMs, slowerPerHourMs: 0, findingInLaps: 0 }
      const of = problem({ people: [driver('ada', { pace }), ben] })
      return { of, spans, expected: expected(of, { spans, stops: [] }) }
    }
    const all = [drives('ada', 0, 60)]
    const half = [drives('ada', 0, 30), drives('ben', 30, 60)]
    // Half an hour at 9.95 s instead of 10 s: 0.9045 laps, known to 1,800,000 ÷ 9,950² × 100 ms × 1.28 = 2.33.
    const [one, other] = [side(all, 100), side(half, 100)]
    expect(compare(one.of, one, other)).toMatchObject({ noRealDifference: true, fairer: 'second' })
    const [sure, equal] = [side(all, 10), side(half, 10)]
    expect(compare(sure.of, sure, equal)).toMatchObject({ noRealDifference: false })
  })
})

describe('changed a little', () => {
  const seeds = [3, 8, 21, 34]
  const worth = (of: Problem) => {
    const answer = plan(of, { solver, gapLaps: 1e-6 })
    return answer.kind === 'planned' ? answer.worthLaps : -Infinity
  }

  it.each(seeds)('%i is the same under other names and in another order', (seed) => {
    const of = smallProblem(seed)
    const renamed = JSON.parse(JSON.stringify(of).replaceAll('person-', 'somebody-')) as Problem
    expect(worth({ ...renamed, people: renamed.people.toReversed() })).toBeCloseTo(worth(of), 4)
  })

  it.each(seeds)('%i is never worse without one of its rules', (seed) => {
    const of = smallProblem(seed)
    const kept = worth(of)
    for (const { id } of of.rules) {
      expect(
        worth({ ...of, rules: of.rules.filter((one) => one.id !== id) }),
      ).toBeGreaterThanOrEqual(kept - 1e-4)
    }
  })

  it('is never worse with one more who need not drive', () => {
    const of = problem({
      people,
      rules: [{ id: 'c', kind: 'continuousDriving', atMostMs: minutes(15) }],
    })
    expect(worth({ ...of, people: [...people, driver('cyd')] })).toBeGreaterThanOrEqual(worth(of))
  })

  it('is worth twice as much in twice the time at the same pace', () => {
    const of = (each: number) =>
      problem({
        people,
        segments: [segment(4, each)],
        rules: [
          { id: 'b', kind: 'drivingSpread', atMostMs: 0 },
          { id: 'n', kind: 'numberOfDrivers', atLeast: 2 },
        ],
      })
    expect(worth(of(30))).toBeCloseTo(2 * worth(of(15)), 6)
  })
})
