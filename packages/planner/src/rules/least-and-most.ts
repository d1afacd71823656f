/** At least and at most of what one person drives: the least is owed by whoever drives at all. */
import type { Term } from '../linear/model.ts'
import type { Person } from '../problem/person.ts'
import type { Rotation } from '../rotation/rotation.ts'

export interface OfPerson {
  readonly person: Person
  readonly value: readonly Term[]
  readonly atLeast?: number | undefined
  readonly atMost?: number | undefined
  readonly tag: string
}

export function leastAndMost(rotation: Rotation, limits: OfPerson): void {
  const { person, value, atLeast, atMost, tag } = limits
  if (atMost !== undefined) rotation.row(value, { atMost, tag })
  if (atLeast === undefined || atLeast <= 0) return
  rotation.row([...value, [rotation.drives(person), -atLeast]], { atLeast: 0, tag })
}
