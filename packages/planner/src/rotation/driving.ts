/**
 * One driver at a time, and no driver twice. Where stints are short, who drives in a slot is the sum of the stints that
 * cover it, which the solver sees through best. Where they are long, driving is a flow along the slots: what begins in
 * a slot is added, what is over is taken away, so that a stint has two entries however many slots it covers.
 */
import type { Grid } from '../grid/grid.ts'
import { times, type Term } from '../linear/model.ts'
import { drivenBy } from './past.ts'
import type { Rotation } from './rotation.ts'

export function addDriving(rotation: Rotation): void {
  const { grid, model } = rotation
  for (const { id } of grid.drivers) {
    if (rotation.isLong) addFlow(rotation, id)
    else addSums(rotation, id)
  }
  for (const { index, runs, isPast } of grid.slots) {
    if (!runs || isPast) continue
    const all = rotation.isLong
      ? grid.drivers.flatMap(({ id }) => rotation.driving(id, index))
      : rotation.covering(index).map(({ column }): Term => [column, 1])
    model.row(all, { atLeast: 1, atMost: 1 })
  }
  apart(rotation)
}

function addSums(rotation: Rotation, person: string): void {
  const { grid, model } = rotation
  for (const slot of grid.slots) {
    const covering = rotation.covering(slot.index).filter((one) => one.person.id === person)
    if (covering.length === 0) continue
    const now: Term = [model.part(), 1]
    setDriving(rotation, person, { index: slot.index, column: now[0] })
    model.row([now, ...covering.map(({ column }): Term => [column, -1])], { atLeast: 0, atMost: 0 })
  }
}

function setDriving(rotation: Rotation, person: string, of: { index: number; column: number }) {
  const slot = rotation.grid.slots[of.index]
  rotation.setDriving(person, of.index, of.column)
  if (slot?.isPast) rotation.fromPast(of.column, drivenBy(slot) === person ? 1 : 0)
}

function addFlow(rotation: Rotation, person: string): void {
  const { grid, model } = rotation
  let before: readonly Term[] = []
  for (const { index } of grid.slots) {
    const begins = rotation.startsOf(person, index)
    const ends = rotation.endsOf(person, index)
    if (before.length === 0 && begins.length === 0) continue
    const now: Term = [model.part(), 1]
    setDriving(rotation, person, { index, column: now[0] })
    model.row([now, ...times(begins, -1), ...ends, ...times(before, -1)], { atLeast: 0, atMost: 0 })
    before = [now]
  }
}

/** Two stints of one driver that follow on are one, unless a change with oneself begins a new one. */
function apart(rotation: Rotation): void {
  const { grid, model, restKeepsApart } = rotation
  for (const { index, isPast, begins } of grid.slots) {
    if (!grid.goesOnAt[index] || isPast || mayFollowOneself(grid, index)) continue
    // A lane change may be as long as the rest.
    if (restKeepsApart && begins !== 'laneChange') continue
    for (const { id } of grid.drivers) {
      const both = [...rotation.endsOf(id, index), ...rotation.startsOf(id, index)]
      if (both.length > 1) model.row(both, { atMost: 1 })
    }
  }
}

/** A change with oneself is made at a stop. */
export function mayFollowOneself({ problem, slots }: Grid, index: number): boolean {
  const begins = slots[index]?.begins
  return problem.counting.changeWithOneself && (begins === 'stop' || begins === 'mayStop')
}
