/** Every kind this build knows, by name and shape number. A mapped type over it makes a missing handler a type error. */
import type * as z from 'zod/mini'
import { carKinds } from './car.ts'
import { peopleKinds } from './people.ts'
import { raceControlKinds } from './race-control.ts'
import { recordKinds } from './record.ts'

export const kinds = {
  ...raceControlKinds,
  ...peopleKinds,
  ...carKinds,
  ...recordKinds,
} as const

export type Kind = keyof typeof kinds
export type Body<K extends Kind = Kind> = z.infer<(typeof kinds)[K]>

export function isKnownKind(kind: string): kind is Kind {
  return Object.hasOwn(kinds, kind)
}

const NAMES: ReadonlyMap<string, Kind> = new Map(
  Object.keys(kinds).map((name) => [name, name as Kind]),
)

/** The kind of this name, as the one string every look-up by kind knows at once. */
export function knownKind(name: string): Kind | undefined {
  return NAMES.get(name)
}
