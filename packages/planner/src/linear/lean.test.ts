import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { chanceOf } from '../testing/chance.ts'
import { solveLean } from './lean.ts'
import { ModelBuilder, type Term } from './model.ts'
import { solve } from './solve.ts'

const solver = await loadHighs()

/**
 * Things of different worth in a few groups, of which each takes some; then rows over sums of them that have a name,
 * some of which nobody comes near and some of which bar what would be best.
 */
function named(seed: number): ModelBuilder {
  const { between } = chanceOf(seed)
  const model = new ModelBuilder()
  const things = Array.from({ length: 48 }, () => model.column({ cost: between(10, 400) / 10 }))
  const groups = Array.from({ length: 12 }, (_, group) =>
    things.filter((_, place) => place % 12 === group).map((column): Term => [column, 1]),
  )
  for (const group of groups) model.row(group, { atMost: between(1, 2) })
  const names = groups.map((group): Term => {
    const name = model.part({ upper: between(1, 3) })
    model.row([...group, [name, -1]], { atLeast: 0, atMost: 0 })
    return [name, 1]
  })
  for (let row = 0; row < 4; row += 1) {
    const some = names.filter(() => between(0, 5) > 0)
    model.row(some, { atMost: between(6, 24), atLeast: between(0, 8) })
  }
  return model
}

it('finds what a search of everything finds, keeps every row, and nothing where there is nothing', () => {
  const outcomes = { optimal: 0, infeasible: 0, stopped: 0 }
  for (let seed = 1; seed <= 60; seed += 1) {
    const model = named(seed)
    const whole = solve(model, { solver })
    const lean = solveLean(model, { solver })
    expect({ seed, status: lean.status, worth: lean.objective.toFixed(3) }).toEqual({
      ...{ seed, status: whole.status },
      worth: whole.objective.toFixed(3),
    })
    outcomes[lean.status] += 1
    if (lean.status !== 'optimal') continue
    expect(lean.bound - lean.objective).toBeLessThanOrEqual(0.01 + 1e-6)
    const { values = [] } = lean
    for (const { terms, lower, upper } of model.rows) {
      const reached = terms.reduce(
        (sum, [column, factor]) => sum + factor * Number(values[column]),
        0,
      )
      expect(reached).toBeGreaterThanOrEqual(lower - 1e-4)
      expect(reached).toBeLessThanOrEqual(upper + 1e-4)
    }
  }
  expect(outcomes.optimal).toBeGreaterThan(30)
  expect(outcomes.infeasible).toBeGreaterThan(3)
}, 60_000)

it('puts a row back that what is best without it breaks', () => {
  const model = new ModelBuilder()
  // Of three that bar each other the relaxation takes half each, 3 × 2 ÷ 2 = 3; of whole ones the fourth is better: 2.5.
  const fourths = Array.from({ length: 10 }, () => {
    const fourth = model.column({ cost: 2.5 })
    const three = Array.from({ length: 3 }, () => model.column({ cost: 2 }))
    three.forEach((one, at) => {
      const next = three[(at + 1) % 3] ?? -1
      for (const other of [next, fourth])
        model.row(
          [
            [one, 1],
            [other, 1],
          ],
          { atMost: 1 },
        )
    })
    return [fourth, 1] as Term
  })
  for (let atMost = 4; atMost <= 34; atMost += 1) model.row(fourths, { atMost })
  // Four times the fourth, and one of three in the other six: 4 × 2.5 + 6 × 2.
  const { status, objective, values } = solveLean(model, { solver })
  expect([status, objective]).toEqual(['optimal', 22])
  expect(fourths.filter(([column]) => (values?.[column] ?? 0) > 0.5)).toHaveLength(4)
})

it('does not take for a mere name what is decided', () => {
  const model = new ModelBuilder()
  const things = Array.from({ length: 9 }, (_, at): Term => [model.column({ cost: 9 - at }), 1])
  const taken = model.part({ lower: 2, upper: 2 })
  model.row([...things, [taken, -1]], { atLeast: 0, atMost: 0 })
  // The two dearest: 9 + 8.
  expect(solveLean(model, { solver })).toMatchObject({ status: 'optimal', objective: 17 })
})
