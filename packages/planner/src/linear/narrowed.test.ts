import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { findsAsMuch } from '../testing/as-whole.ts'
import { chanceOf } from '../testing/chance.ts'
import { ModelBuilder, type Term } from './model.ts'
import { solveNarrowed } from './narrowed.ts'
import { partOf } from './part.ts'
import { solve } from './solve.ts'

const solver = await loadHighs()

/** Things of different worth, a few rows of which each takes some: as many as fit, and at least a few. */
function packing(seed: number): ModelBuilder {
  const { between } = chanceOf(seed)
  const model = new ModelBuilder()
  const things = Array.from({ length: 40 }, (): Term => [
    model.column({ cost: between(10, 400) / 10 }),
    between(1, 9),
  ])
  for (let row = 0; row < 6; row += 1) {
    const some = things.filter(() => between(0, 2) > 0)
    const atMost = between(8, 30)
    model.row(some, { atMost, ...(between(0, 4) === 0 && { atLeast: atMost - between(0, 1) }) })
  }
  const few = things.filter((_, place) => place % 5 === 0).map(([column]): Term => [column, 1])
  model.row(few, { atLeast: between(0, 7), atMost: 6 })
  return model
}

it('finds what a search of all columns finds, and nothing where that finds nothing', () => {
  const outcomes = findsAsMuch(packing, (model) => solveNarrowed(model, { solver }), solver)
  expect(outcomes.optimal).toBeGreaterThan(20)
  expect(outcomes.infeasible).toBeGreaterThan(3)
}, 60_000)

it('finds what is better by one column that is dearer', () => {
  const model = new ModelBuilder()
  const thing = (weight: number, cost: number): Term => [model.column({ cost }), weight]
  const dear = thing(10, 18)
  const others = [thing(6, 12), thing(6, 11.9), thing(5, 8.9), thing(5, 8.9)]
  const dearest = Array.from({ length: 12 }, () => thing(10, 1))
  model.row([dear, ...others, ...dearest], { atMost: 10 })
  /*
   * The relaxation takes the first of six and four sixths of the second, 12 + 7.93: 1.983 a unit of weight. The two of
   * five are dear at 9.917 − 8.9 = 1.02, and worth 17.8 together, 2.13 short. The one of ten is dear at 1.83: 18.
   */
  const { status, objective, values } = solveNarrowed(model, { solver })
  expect([status, objective]).toEqual(['optimal', 18])
  expect(values?.[dear[0]]).toBe(1)
})

it('takes a part for what is left of the whole', () => {
  const model = new ModelBuilder()
  const [one, two, three] = [5, 3, 2].map((cost) => model.column({ cost })) as [
    number,
    number,
    number,
  ]
  model.row(
    [
      [one, 1],
      [two, 1],
      [three, 1],
    ] as const,
    { atMost: 2 },
  )
  model.row(
    [
      [one, 1],
      [three, 1],
    ] as const,
    { atMost: 2 },
  )
  const part = partOf(model, (column) => (column === one ? 1 : undefined))
  // The first is held at 1: one of the others is left, and what both may have always holds.
  expect(part).toMatchObject({ offset: 5, rows: [{ upper: 1 }] })
  const { values, objective } = solve(part, { solver })
  expect(objective).toBe(8)
  expect([...part.toWhole(values ?? [])].map(Math.abs)).toEqual([1, 1, 0])
  expect([...part.fromWhole([1, 0.5, 0])]).toEqual([0.5, 0])
})
