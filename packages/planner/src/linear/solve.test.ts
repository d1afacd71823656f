/**
 * Outside check of the model layer: nurse rostering Instance 1 of Curtois & Qu, "Computational results on new staff
 * scheduling benchmark instances" (University of Nottingham, 2014), in `../testing/nurse-instance-1.txt` as published.
 * Its optimum, 607, is a figure from memory, reproduced with HiGHS. Runs, rests and totals are those of drivers;
 * requests and penalties for cover are no words of a rotation, so the rows are written here.
 */
import { readFileSync } from 'node:fs'
import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { ModelBuilder, type Term } from './model.ts'
import { solve } from './solve.ts'

const solver = await loadHighs()
const text = readFileSync(new URL('../testing/nurse-instance-1.txt', import.meta.url), 'utf8')
const DAYS = 14
const SHIFT_MINUTES = 480

function lines(section: string): readonly (readonly string[])[] {
  const all = text.split(/\r?\n/)
  const rest = all.slice(all.indexOf(section) + 1)
  const end = rest.findIndex((line) => line.startsWith('SECTION_'))
  return (end < 0 ? rest : rest.slice(0, end))
    .filter((line) => line !== '')
    .map((line) => line.split(','))
}

function roster(): ModelBuilder {
  const model = new ModelBuilder()
  const works = new Map<string, readonly Term[]>()
  for (const [name = '', , most = '', least = '', ...limits] of lines('SECTION_STAFF')) {
    const days = Array.from({ length: DAYS }, (): Term => [model.column(), 1])
    works.set(name, days)
    model.row(days, {
      atLeast: Number(least) / SHIFT_MINUTES,
      atMost: Number(most) / SHIFT_MINUTES,
    })
    const [row = 0, leastRow = 0, leastOff = 0, weekends = 0] = limits.map(Number)
    addRuns(model, days, { row, leastRow, leastOff })
    const worked = [5, 12].map((saturday): Term => {
      const column = model.column()
      for (const day of [saturday, saturday + 1]) {
        model.row(
          [
            [column, 1],
            [days[day]?.[0] ?? 0, -1],
          ],
          { atLeast: 0 },
        )
      }
      return [column, 1]
    })
    model.row(worked, { atMost: weekends })
  }
  const on = (name: string, day: string): Term => works.get(name)?.[Number(day)] ?? [0, 0]
  for (const [name = '', ...days] of lines('SECTION_DAYS_OFF')) {
    for (const day of days) model.fix(on(name, day)[0], 0)
  }
  for (const [name = '', day = '', , price] of lines('SECTION_SHIFT_ON_REQUESTS')) {
    model.row([on(name, day), [model.part({ cost: -Number(price) }), 1]], { atLeast: 1 })
  }
  for (const [name = '', day = '', , price] of lines('SECTION_SHIFT_OFF_REQUESTS')) {
    model.row([on(name, day), [model.part({ cost: -Number(price) }), -1]], { atMost: 0 })
  }
  for (const [day = '', , wanted, under, over] of lines('SECTION_COVER')) {
    const short: Term = [model.part({ cost: -Number(under), upper: Infinity }), 1]
    const many: Term = [model.part({ cost: -Number(over), upper: Infinity }), -1]
    const all = [...works.keys()].map((name) => on(name, day))
    model.row([...all, short, many], { atLeast: Number(wanted), atMost: Number(wanted) })
  }
  return model
}

/** Before the first day and after the last a run or a rest may go on for ever. */
function addRuns(
  model: ModelBuilder,
  days: readonly Term[],
  { row, leastRow, leastOff }: { row: number; leastRow: number; leastOff: number },
): void {
  const day = (at: number, factor: number): Term => [days[at]?.[0] ?? 0, factor]
  for (let at = 0; at + row < DAYS; at += 1)
    model.row(days.slice(at, at + row + 1), { atMost: row })
  for (let at = 0; at < DAYS; at += 1) {
    for (let length = 1; length < leastRow && at + length + 1 < DAYS; length += 1) {
      const inside = days.slice(at + 1, at + length + 1)
      model.row([day(at, -1), ...inside, day(at + length + 1, -1)], { atMost: length - 1 })
    }
    for (let length = 1; length < leastOff && at + length + 1 < DAYS; length += 1) {
      const inside = days.slice(at + 1, at + length + 1).map(([column]): Term => [column, -1])
      model.row([day(at, 1), ...inside, day(at + length + 1, 1)], { atMost: 1 })
    }
  }
}

describe('solve', () => {
  it('finds the optimum of a published roster, and tells how far it has come', () => {
    const told: number[] = []
    const onProgress = ({ boundLaps }: { boundLaps: number }) => told.push(boundLaps)
    const solved = solve(roster(), { solver, onProgress })
    expect(solved.status).toBe('optimal')
    expect(Math.round(-solved.objective)).toBe(607)
    expect(told.length).toBeGreaterThan(0)
    // The bound comes down to what is proved.
    expect(told.at(-1)).toBeGreaterThanOrEqual(-607.01)
  })

  it('says so where nothing is possible', () => {
    const model = new ModelBuilder()
    model.row([[model.column(), 1]], { atLeast: 2 })
    expect(solve(model, { solver })).toMatchObject({ status: 'infeasible' })
  })

  it('stops when it is told to', () => {
    expect(solve(roster(), { solver, shouldStop: () => true }).status).toBe('stopped')
  })
})
