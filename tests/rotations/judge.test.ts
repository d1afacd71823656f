/** A judge that lets everything through would be none. */
import { explain, plan, without, type Problem } from '@pitlamp/planner'
import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { judgementOf, type Planner } from './judge.ts'
import type { Meeting } from './meeting.ts'

const MINUTE = 60_000
const solver = await loadHighs()

/** An hour with a stop at half time: each drives half of it. */
const meeting: Meeting = {
  given: {
    segments: [60],
    people: ['Ana', 'Ben'].map((name, place) => ({ name, paceMs: 10_000 + 500 * place })),
    stops: [[1, 30]],
    rules: [{ id: 'most', kind: 'drivingTime', value: { atMostMs: 30 * MINUTE } }],
  },
  asked: { balance: { toleranceMs: 0, lapsPerHour: 0 } },
}
/** Two stints are needed, and each who drives has to drive for forty minutes. */
const collide: Meeting = {
  ...meeting,
  given: {
    ...meeting.given,
    rules: [
      ...(meeting.given.rules ?? []),
      { id: 'least', kind: 'drivingTime', value: { atLeastMs: 40 * MINUTE } },
      { id: 'row', kind: 'stintsInARow', value: { atMost: 1 } },
    ],
  },
}

function wrongBy(asked: Meeting, planner: Partial<Planner>): string {
  const bench = { solver, limitSeconds: 10, tryWhy: true }
  return judgementOf(asked, { ...bench, planner: { plan, explain, ...planner } }).wrong.join(' ')
}

it('lets an answer stand', () => {
  expect(wrongBy(meeting, {})).toBe('')
  expect(wrongBy(collide, {})).toBe('')
})

it('sees a plan that breaks a rule', () => {
  const lax: Planner['plan'] = (problem, options) => plan(without(problem, ['most']), options)
  expect(wrongBy(meeting, { plan: lax })).toMatch(/It breaks: Person Ana|It breaks: Ana/)
})

it('sees laps that its plan is not worth', () => {
  const boastful: Planner['plan'] = (problem, options) => {
    const answer = plan(problem, options)
    return answer.kind === 'planned' ? { ...answer, worthLaps: answer.worthLaps + 0.1 } : answer
  }
  expect(wrongBy(meeting, { plan: boastful })).toMatch(/^It says .* laps, and its plan is worth/)
})

it('sees a better plan, and one where there is said to be none', () => {
  const free = { ...meeting, given: { ...meeting.given, rules: [] } }
  const turns = { id: 'row', kind: 'changeAtStop' as const }
  const strict: Planner['plan'] = (problem, options) =>
    plan({ ...problem, rules: [turns] } satisfies Problem, options)
  expect(wrongBy(free, { plan: strict })).toMatch(/^Tried out the best is worth/)
  const none: Planner['plan'] = () => ({ kind: 'impossible' })
  expect(wrongBy(free, { plan: none })).toMatch(/nothing collides.*Tried out the best is worth/)
})

it('sees what does not collide, and giving up what does not help', () => {
  const other: Planner['explain'] = () => ({
    ...{ kind: 'collision', giveUp: ['row'], collide: ['row', 'most'] },
  })
  expect(wrongBy(collide, { explain: other })).toBe(
    'Without row there is no plan either. Said to collide, and do not: row, most.',
  )
})
