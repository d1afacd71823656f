/** Equal shares against laps: what somebody drives beyond the tolerance around their share has its price. */
import { MINUTE_MS } from '../grid/grid.ts'
import type { Term } from '../linear/model.ts'
import type { Person } from '../problem/person.ts'
import type { Rotation } from './rotation.ts'

export function addBalance(rotation: Rotation): void {
  const { grid, model } = rotation
  const { toleranceMs, lapsPerHour } = grid.problem.balance
  const parts = grid.drivers.reduce((sum, { share = 1 }) => sum + share, 0)
  if (lapsPerHour <= 0 || parts <= 0) return
  for (const person of grid.drivers) {
    const { share = 1 } = person
    if (share === 0) continue
    const fair = (grid.runMs * share) / parts
    const off = model.part({ cost: -lapsPerHour / 60, upper: Infinity })
    const free = { off, leastMs: fair - toleranceMs, mostMs: fair + toleranceMs }
    const total: Term = [rotation.totalMinutes(person), 1]
    model.row([total, [off, -1]], { atMost: free.mostMs / MINUTE_MS })
    model.row([total, [off, 1]], { atLeast: free.leastMs / MINUTE_MS })
    addSteps(rotation, person, free)
    addFewest(rotation, person, free)
  }
}

/** What somebody may drive for nothing, and the minutes that lie outside. */
interface Free {
  readonly off: number
  readonly leastMs: number
  readonly mostMs: number
}

/** Totals come in whole steps: between the last that is free and the next the price is a line. */
function addSteps(rotation: Rotation, person: Person, { off, leastMs, mostMs }: Free): void {
  const { model } = rotation
  const stepMs = rotation.stepMs(person)
  if (stepMs === 0) return
  const total = rotation.totalMinutes(person)
  const last = Math.floor(mostMs / stepMs) * stepMs
  const over = (last + stepMs - mostMs) / stepMs
  const most: readonly Term[] = [
    [total, over],
    [off, -1],
  ]
  model.row(most, { atMost: (over * last) / MINUTE_MS })
  const first = Math.ceil(leastMs / stepMs) * stepMs
  const under = (leastMs - first + stepMs) / stepMs
  const least: readonly Term[] = [
    [total, under],
    [off, 1],
  ]
  model.row(least, { atLeast: (under * first) / MINUTE_MS })
}

/** It takes whole stints to drive so much: with one fewer, what the longest are short of it has its price. */
function addFewest(rotation: Rotation, person: Person, { off, leastMs }: Free): void {
  const stints = rotation.stintsOf(person.id)
  const longestMs = stints.reduce((most, { drivenMs }) => Math.max(most, drivenMs), 0)
  if (longestMs === 0 || leastMs <= 0) return
  const fewest = Math.ceil(leastMs / longestMs)
  const shortMs = leastMs - longestMs * (fewest - 1)
  const all = stints.map(({ column }): Term => [column, 1])
  rotation.model.row([...all, [off, MINUTE_MS / shortMs]], { atLeast: fewest })
}
