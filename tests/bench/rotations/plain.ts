/**
 * The same instances as a plain person-by-slot model, for comparison only: who drives and who marshals in each slot,
 * with a yes or no for every beginning, and the rules as windows over slots. Tiredness is left out of its price, since
 * a slot does not know how long its driver has been there; so its plans are only about as good.
 */
import type { Problem, SolveOptions } from '@pitlamp/planner'
import { gridOf, drivenMs } from '../../../packages/planner/src/grid/grid.ts'
import { lapsIn } from '../../../packages/planner/src/grid/laps.ts'
import { ModelBuilder, type Term } from '../../../packages/planner/src/linear/model.ts'
import { solve } from '../../../packages/planner/src/linear/solve.ts'

const HOUR_MS = 3_600_000

export function solvePlain(problem: Problem, options: SolveOptions): number {
  const model = new ModelBuilder()
  const grid = gridOf(problem)
  const { slots, drivers } = grid
  const fairMs = grid.runMs / drivers.length
  const rows = drivers.map((person) => {
    const drives = slots.map((slot): Term => {
      const at = { sinceAt: slot.fromAt, stops: slot.begins === 'stop', stop: problem.stop }
      return [model.column({ cost: lapsIn(person, slot, at) }), 1]
    })
    const marshals = slots.map((): Term => [model.column(), 1])
    addBeginnings(model, drives, person.pace?.findingInLaps ?? 0)
    addBeginnings(model, marshals, problem.dutyChangeLaps)
    for (const row of [drives, marshals]) addRuns(model, row, { most: 4, rest: 2 })
    addRolling(model, drives, slots)
    const off = model.part({ cost: -problem.balance.lapsPerHour, upper: Infinity })
    const hours = slots.map((slot, at): Term => [
      drives[at]?.[0] ?? 0,
      drivenMs(grid, slot) / HOUR_MS,
    ])
    const spare = problem.balance.toleranceMs / HOUR_MS
    model.row([...hours, [off, -1]], { atMost: fairMs / HOUR_MS + spare })
    model.row([...hours, [off, 1]], { atLeast: Math.max(fairMs / HOUR_MS - spare, 0) })
    model.row(hours, { atLeast: fairMs / 2 / HOUR_MS })
    slots.forEach((_, at) => model.row(pair(drives[at], marshals[at]), { atMost: 1 }))
    return { person, drives, marshals }
  })
  slots.forEach((_, at) => {
    for (const duty of ['drives', 'marshals'] as const) {
      const all = rows.flatMap((row) => pair(row[duty][at]))
      model.row(all, { atLeast: 1, atMost: 1 })
    }
    const novices = rows.filter(({ person }) => person.categories.includes('novice'))
    for (const one of novices) {
      for (const other of novices) {
        if (one !== other) model.row(pair(one.drives[at - 1], other.drives[at]), { atMost: 1 })
      }
    }
  })
  return solve(model, options).objective
}

function pair(...terms: readonly (Term | undefined)[]): readonly Term[] {
  return terms.flatMap((term) => (term ? [term] : []))
}

function addBeginnings(model: ModelBuilder, row: readonly Term[], laps: number): void {
  row.forEach(([on], at) => {
    const before = row[at - 1]
    const begun = model.part({ cost: -laps })
    model.row([[begun, 1], [on, -1], ...pair(before)], { atLeast: 0 })
  })
}

function addRuns(
  model: ModelBuilder,
  row: readonly Term[],
  of: { most: number; rest: number },
): void {
  row.forEach(([on], at) => {
    model.row(row.slice(at, at + of.most + 1), { atMost: of.most })
    const next = row[at + 1]
    for (const back of row.slice(at + 2, at + 1 + of.rest)) {
      if (next) model.row([[on, 1], [next[0], -1], back], { atMost: 1 })
    }
  })
}

function addRolling(
  model: ModelBuilder,
  row: readonly Term[],
  slots: readonly { readonly fromAt: number; readonly toAt: number }[],
): void {
  for (const first of slots) {
    const end = first.fromAt + 5 * HOUR_MS
    const inside = slots.flatMap(({ fromAt, toAt }, at): readonly Term[] => {
      const ms = Math.min(toAt, end) - Math.max(fromAt, first.fromAt)
      return ms > 0 ? [[row[at]?.[0] ?? 0, ms / HOUR_MS]] : []
    })
    model.row(inside, { atMost: 2 })
  }
}
