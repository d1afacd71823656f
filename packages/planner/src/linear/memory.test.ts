import loadHighs, { type Highs } from 'highs'
import { expect, it } from 'vitest'
import { explain } from '../explain.ts'
import { plan } from '../plan.ts'
import { driver, problem, segment } from '../testing/make.ts'
import { inMemory } from './memory.ts'

const solver = await loadHighs()
const race = problem({
  segments: [segment(4, 30)],
  people: ['ada', 'ben', 'cyd'].map((id) => driver(id)),
  rules: [{ id: 'post', kind: 'dutyWanted', duty: 'post', count: 1 }],
})

/** As the solver goes when it is refused memory, from its n-th model on. */
function dyingAt(n: number): Highs {
  let models = 0
  const withModel: Highs['withModel'] = (...given: readonly unknown[]) => {
    models += 1
    if (models < n) return (solver.withModel as (...of: readonly unknown[]) => never)(...given)
    throw Object.assign(new Error('Aborted()'), { name: 'RuntimeError' })
  }
  return { ...solver, withModel }
}

it('a search that runs out of memory has stopped, and what was found before stands', () => {
  const kinds = [1, 2, 3, 4, 5].map((n) => plan(race, { solver: dyingAt(n) }).kind)
  expect(kinds.slice(0, 2)).toEqual(['stopped', 'stopped'])
  expect(kinds.at(-1)).toBe('planned')
  expect(explain(race, { solver: dyingAt(1) }).kind).toBe('stopped')
})

it('what is no want of memory is thrown on', () => {
  const endless = () => {
    throw new RangeError('Maximum call stack size exceeded')
  }
  expect(() => inMemory(endless, undefined)).toThrow('call stack')
  const refused = () => {
    throw new RangeError('WebAssembly.Memory(): could not allocate memory')
  }
  expect(inMemory(refused, 'stopped')).toBe('stopped')
})
