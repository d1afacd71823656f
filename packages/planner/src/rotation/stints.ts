/** Every stint that can be driven: one column each. */
import { betweenMs, canTake, drivenMs, type Grid } from '../grid/grid.ts'
import { lapsIn } from '../grid/laps.ts'
import type { Slot } from '../grid/slots.ts'
import type { Person } from '../problem/person.ts'
import { drivenBy, wentOn } from './past.ts'

/** One person at the controller from one slot to before another. */
export interface StintShape {
  readonly person: Person
  readonly from: number
  /** The slot after its last. */
  readonly to: number
  /** What counts as driving. */
  readonly drivenMs: number
  /** Of what is still to come. */
  readonly laps: number
  /** Over already: nothing can be changed about it. */
  readonly isPast: boolean
}

/** All stints of everybody, before any rule. */
export function stintShapes(grid: Grid): readonly StintShape[] {
  return grid.drivers.flatMap((person) =>
    grid.slots.flatMap((first) => [...stintsFrom(grid, person, first)]),
  )
}

function* stintsFrom(grid: Grid, person: Person, first: Slot): Generator<StintShape> {
  const { slots, problem, goesOnAt } = grid
  if (!first.runs || !mayDrive(person, first) || wentOn(grid, first.index)) return
  let driven = first.begins === 'mayStop' && !problem.counting.stops ? -problem.stop.standsMs : 0
  let laps = first.isPast ? 0 : -(person.pace?.findingInLaps ?? 0)
  for (let at = first.index; ; at += 1) {
    const slot = slots[at]
    if (!slot || (at > first.index && !goesOnAt[at]) || !mayDrive(person, slot)) return
    driven += drivenMs(grid, slot) + (at > first.index ? betweenMs(grid, slot) : 0)
    const stops = slot.begins === 'stop' || (slot.begins === 'mayStop' && at === first.index)
    if (!slot.isPast)
      laps += lapsIn(person, slot, { sinceAt: first.fromAt, stops, stop: problem.stop })
    if (wentOn(grid, at + 1)) continue
    const isPast = slot.isPast && (slots[at + 1]?.isPast === true || !goesOnAt[at + 1])
    yield { person, from: first.index, to: at + 1, drivenMs: Math.max(0, driven), laps, isPast }
    if (isPast) return
  }
}

/** In the past only where it was so, and ahead where the person is there. */
function mayDrive(person: Person, slot: Slot): boolean {
  return slot.isPast ? drivenBy(slot) === person.id : canTake(person, 'controller', slot)
}
