import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { plan } from '../plan.ts'
import type { Pin, Problem, Span } from '../problem/problem.ts'
import type { Rule } from '../rules/index.ts'
import { driver, GREEN_AT, minutes, problem, segment } from '../testing/make.ts'

const solver = await loadHighs()
const people = ['ada', 'ben', 'cyd', 'dua'].map((id) => driver(id))
const post = (of: Partial<Rule & { kind: 'dutyWanted' }> = {}): Rule => ({
  ...{ id: 'post', kind: 'dutyWanted', duty: 'post', count: 1, ...of },
})
const relief = (byMs: number): Rule => ({ id: 'relief', kind: 'relief', before: true, byMs })
const kept = (person: string): Pin => ({
  ...{ id: `kept-${person}`, kind: 'span', person, duty: 'post', segment: 'one' },
  ...{ fromMs: 0, toMs: minutes(30) },
})

/** Who is at a post, and when, in minutes. */
function posts(of: Partial<Problem>) {
  const answer = plan(problem({ people, ...of }), { solver })
  if (answer.kind !== 'planned') return answer.kind
  return answer.spans
    .filter(({ duty }) => duty === 'post')
    .map(({ person, fromMs, toMs }) => [person, fromMs / minutes(1), toMs / minutes(1)])
}

describe('a relief that came before the marshal left', () => {
  const spans: readonly Span[] = (
    [
      ['ada', 'controller', 0],
      ['ben', 'post', 0],
      ['cyd', 'post', 25],
    ] as const
  ).map(([person, duty, from]) => ({
    ...{ person, duty, segment: 'one' },
    ...{ fromMs: minutes(from), toMs: minutes(30) },
  }))

  it.each([0, 5])('is all that stays there, %i min early', (early) => {
    const past = { untilMs: minutes(30), spans }
    const rules = [post(), relief(minutes(early))]
    // Ben and Cyd stand there already: anybody else would have to come.
    const at = posts({ segments: [segment(4, 15, { past })], rules, dutyChangeLaps: 1 })
    expect(at).toEqual([[expect.stringMatching(/ben|cyd/), 30, 60]])
  })
})

describe('somebody kept at a post', () => {
  const segments = [segment(4, 15)]

  it('stands there where no rule asks for anybody', () => {
    expect(posts({ segments, pins: [kept('ada')] })).toEqual([['ada', 0, 30]])
  })

  it('is relieved where the rules ask for that', () => {
    const [, ...others] = people
    const leaving = [driver('ada', { there: [{ toAt: GREEN_AT + minutes(30) }] }), ...others]
    const given = { segments, people: leaving, pins: [kept('ada')], dutyChangeLaps: 1 }
    expect(posts(given)).toEqual([['ada', 0, 30]])
    const relieved = posts({ ...given, rules: [relief(0)] })
    expect(relieved).toEqual([
      ['ada', 0, 30],
      [expect.stringMatching(/ben|cyd|dua/), 30, 60],
    ])
  })

  it('may be one more than the rules ask for', () => {
    const pins = [kept('ada'), kept('ben')]
    const both = (rules: readonly Rule[]) => posts({ segments, pins, rules, dutyChangeLaps: 1 })
    // Either goes on, and the other leaves at half time; with relief nobody leaves without one.
    expect(both([post()])).toHaveLength(2)
    expect(both([post(), relief(0)])).toEqual([
      ['ada', 0, 60],
      ['ben', 0, 60],
    ])
  })

  it('stands there in one segment where only another has posts with names', () => {
    const two = segment(4, 15, { id: 'two', after: 'break', startsAt: GREEN_AT + minutes(90) })
    const rules = [post({ post: 'A', segments: ['two'] })]
    expect(posts({ segments: [...segments, two], pins: [kept('ada')], rules })).toEqual(
      expect.arrayContaining([['ada', 0, 30]]),
    )
  })
})
