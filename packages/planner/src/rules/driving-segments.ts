import { isOf } from '../grid/grid.ts'
import type { Term } from '../linear/model.ts'
import type { Person } from '../problem/person.ts'
import type { Rotation } from '../rotation/rotation.ts'
import { leastAndMost } from './least-and-most.ts'
import type { RuleKind } from './rule-kind.ts'

/** In how many segments each who drives has the controller, however short. */
export interface DrivingSegments {
  readonly id: string
  readonly kind: 'drivingSegments'
  readonly who?: string
  readonly atLeast?: number
  readonly atMost?: number
}

export const drivingSegments: RuleKind<DrivingSegments> = {
  rows: ({ id, who, atLeast, atMost }, rotation) => {
    for (const person of rotation.grid.drivers.filter((one) => isOf(one, who))) {
      const value = segmentsDriven(rotation, person, id)
      leastAndMost(rotation, { person, value, atLeast, atMost, tag: id })
    }
  },
}

/** One yes or no a segment: somebody drives in it. */
export function segmentsDriven(rotation: Rotation, person: Person, tag: string): readonly Term[] {
  const { grid, model } = rotation
  return grid.problem.segments.flatMap((segment): Term[] => {
    const here = grid.slots.filter((slot) => slot.segment === segment)
    const driving = here
      .map(({ index }) => rotation.driving(person.id, index))
      .filter((d) => d.length)
    if (driving.length === 0) return []
    const column = model.column()
    if (here.every(({ isPast }) => isPast)) keepPast(rotation, column, driving)
    for (const one of driving)
      model.row([[column, 1], ...one.map(([c]): Term => [c, -1])], { atLeast: 0, tag })
    model.row([[column, 1], ...driving.flat().map(([c]): Term => [c, -1])], { atMost: 0, tag })
    return [[column, 1]]
  })
}

function keepPast(rotation: Rotation, column: number, driving: readonly (readonly Term[])[]): void {
  const drove = driving.flat().some(([one]) => rotation.past.get(one) === 1)
  rotation.past.set(column, drove ? 1 : 0)
}
