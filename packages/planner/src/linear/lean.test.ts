import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { findsAsMuch } from '../testing/as-whole.ts'
import { chanceOf } from '../testing/chance.ts'
import { solveLean } from './lean.ts'
import { ModelBuilder, type Term } from './model.ts'

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
  const outcomes = findsAsMuch(named, (model) => solveLean(model, { solver }), solver)
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
  // The two dearest, 9 + 8; all nine, were it a mere name, 45.
  const told: number[] = []
  const onProgress = ({ boundLaps }: { boundLaps: number }) => told.push(boundLaps)
  expect(solveLean(model, { solver, onProgress })).toMatchObject({
    status: 'optimal',
    objective: 17,
  })
  expect(Math.max(...told)).toBeCloseTo(17, 3)
})
