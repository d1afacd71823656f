/** Every rotation of small problems tried one by one, by a judge that shares no code with the model. */
import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { plan } from './plan.ts'
import { bestOfAll } from './testing/every.ts'
import { smallProblem } from './testing/small.ts'

const solver = await loadHighs()
const COUNT = Number(process.env['SMALL_PROBLEMS'] ?? 40)

it('is worth as much as the best of all rotations, and there is none where it says so', () => {
  const outcomes = { planned: 0, impossible: 0 }
  for (let seed = 1; seed <= COUNT; seed += 1) {
    const problem = smallProblem(seed)
    const best = bestOfAll(problem)
    const answer = plan(problem, { solver, gapLaps: 1e-6 })
    if (answer.kind !== 'planned') {
      expect({ seed, kind: answer.kind, best }).toEqual({
        seed,
        kind: 'impossible',
        best: undefined,
      })
      outcomes.impossible += 1
      continue
    }
    expect({ seed, worth: answer.worthLaps.toFixed(4) }).toEqual({ seed, worth: best?.toFixed(4) })
    outcomes.planned += 1
  }
  expect(Math.min(outcomes.planned, outcomes.impossible)).toBeGreaterThan(COUNT / 10)
}, 120_000)
