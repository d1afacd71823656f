/** Where the car stops: a given stop is there, one to be chosen is there where drivers change or somebody waits. */
import { waitLaps } from '../grid/laps.ts'
import type { Slot } from '../grid/slots.ts'
import type { Term } from '../linear/model.ts'
import { key, type Rotation } from './rotation.ts'

export interface StopsToAdd {
  /** No rule stands against a stop here. */
  readonly allowed: (slot: Slot) => boolean
  /** Something asks for stops for themselves, so that the car may stop without a change of driver. */
  readonly withoutChange: boolean
}

export function addStops(rotation: Rotation, { allowed, withoutChange }: StopsToAdd): void {
  const { grid, model } = rotation
  for (const slot of grid.slots) {
    if (slot.begins === 'stop') {
      const column = model.column({ lower: 1 })
      rotation.stops.set(slot.index, column)
      if (slot.isPast) rotation.past.set(column, 1)
    }
    if (slot.begins !== 'mayStop') continue
    const column = model.column({ upper: allowed(slot) ? 1 : 0 })
    rotation.stops.set(slot.index, column)
    const changes = grid.drivers.flatMap(({ id }) => rotation.startsOf(id, slot.index))
    const waits = withoutChange && allowed(slot) ? addWaits(rotation, slot) : []
    model.row([[column, -1], ...changes, ...waits], { atLeast: 0, atMost: 0 })
  }
}

/** Whoever drives on after standing loses the time. */
function addWaits(rotation: Rotation, slot: Slot): readonly Term[] {
  const { grid, model } = rotation
  return grid.drivers.flatMap((person): Term[] => {
    const on = rotation.driving(person.id, slot.index)
    if (on.length === 0 || !person.pace) return []
    const wait = model.part({ cost: -waitLaps(person.pace, slot, grid.problem.stop) })
    rotation.waits.set(key(person.id, slot.index), wait)
    const begun = rotation.startsOf(person.id, slot.index)
    model.row([[wait, 1], ...on.map(([c]): Term => [c, -1]), ...begun], { atMost: 0 })
    return [[wait, 1]]
  })
}
