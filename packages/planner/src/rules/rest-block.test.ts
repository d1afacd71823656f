/** Worked out by hand: four quarters of an hour, of which Ada drives 100 laps each (9 s) and Ben 90 (10 s). */
import loadHighs from 'highs'
import { expect, test } from 'vitest'
import { plan } from '../plan.ts'
import type { Problem } from '../problem/problem.ts'
import { driver, GREEN_AT, minutes, problem } from '../testing/make.ts'
import type { Rule } from './index.ts'

const solver = await loadHighs()
const ada = driver('ada', { lapMs: 9_000, categories: ['quick'] })
const ben = driver('ben', { categories: ['steady'] })
const cyd = driver('cyd', { lapMs: 12_000, categories: ['new'] })

function worth(rules: readonly Rule[], of: Partial<Problem> = {}): number | string {
  const named = rules.map((rule, place) => ({ ...rule, id: `rule-${place}` }))
  const answer = plan(problem({ people: [ada, ben], rules: named, ...of }), { solver })
  return answer.kind === 'planned' ? Math.round(answer.worthLaps * 100) / 100 : answer.kind
}

const id = ''
const post: Rule = { id, kind: 'dutyWanted', duty: 'post', count: 1 }
const rest = (least: number, of: Partial<Extract<Rule, { kind: 'restBlock' }>> = {}): Rule => {
  return { id, kind: 'restBlock', atLeastMs: minutes(least), marshallingIsRest: true, ...of }
}
const within = (from: number, to: number) => {
  return { windows: [{ fromAt: GREEN_AT + minutes(from), toAt: GREEN_AT + minutes(to) }] }
}
const windows = [...within(0, 10).windows, ...within(20, 40).windows]
const three = { people: [ada, ben, cyd] }
const early: Rule = { id, kind: 'relief', before: true, byMs: minutes(5) }
/** Ada stands in for Cyd, who rests first; Ben drives meanwhile. */
const first: readonly Rule[] = [
  post,
  { id, kind: 'mayNot', person: 'ben', duty: 'post' },
  rest(15, { who: 'new', ...within(0, 15), marshallingIsRest: false }),
]
const cases: readonly (readonly [string, readonly Rule[], number | string, Partial<Problem>?])[] = [
  ['a quarter off', [rest(15)], 390],
  ['half an hour off in one piece', [rest(30)], 380],
  ['too long for two', [rest(45)], 'impossible'],
  ['asked only of whoever has a duty', [rest(30, { who: 'steady' })], 400],
  ['longer than the race, so no duty at all', [rest(75, { who: 'quick' })], 360],
  ['longer than the race for everybody', [rest(75)], 'impossible'],
  ['the two quarters in the middle', [rest(30, { who: 'quick', ...within(10, 50) })], 380],
  // The first window is too short; from 20 to 35 the second and the third quarter are off.
  ['in the window that has room', [rest(15, { who: 'quick', windows })], 380],
  ['a window that ends after the race', [rest(20, { who: 'quick', ...within(45, 90) })], 360],
  // The last quarter.
  ['as far as the race goes', [rest(15, { who: 'quick', ...within(40, 90) })], 390],
  ['marshalling is rest', [post, rest(15)], 390],
  ['marshalling is none', [post, rest(15, { marshallingIsRest: false })], 'impossible'],
  ['the wall is none', [{ ...post, duty: 'wall' }, rest(15)], 'impossible'],
  // Ben the first quarter, then Ada.
  ['no duty before the rest is over', first, 390, three],
  // Ben the first two: Cyd would be at the post five minutes before the second.
  ['a relief that comes early breaks it', [...first, early], 380, three],
]
for (const [name, rules, laps, of] of cases) {
  test(`one long rest: ${name}`, () => expect(worth(rules, of)).toBe(laps))
}
