/** Parts of random rules: numbers loose or tight, and every now and then not known yet. */
import { NOT_KNOWN_YET, type Rule } from '@pitlamp/race'
import fc from 'fast-check'

/** What a rule's numbers are measured by. */
export interface Room {
  /** Race clock of all segments. */
  readonly raceMs: number
  /** One person's equal share of it. */
  readonly fairMs: number
  readonly slotMs: number
  readonly slots: number
  readonly people: number
  /** Slots in each segment. */
  readonly segments: readonly number[]
  /** Limits lie about where they cannot be kept, instead of well away from there. */
  readonly isTight: boolean
}

export type AnyRule = Omit<Rule, 'id'>
type Between = readonly [least: number, most: number]

const MINUTE_MS = 60_000

export function between(least: number, most: number): fc.Arbitrary<number> {
  return fc.integer({ min: least, max: Math.max(least, most) })
}

/** A number, from the one range or the other. */
export function count({ isTight }: Room, loose: Between, tight: Between): fc.Arbitrary<number> {
  return between(...(isTight ? tight : loose))
}

/** Per cent of a length, in whole minutes. */
export function percent(room: Room, ofMs: number, [loose, tight]: readonly [Between, Between]) {
  return count(room, loose, tight).map(
    (share) => Math.round((ofMs * share) / 100 / MINUTE_MS) * MINUTE_MS,
  )
}

export function asked<T>(value: fc.Arbitrary<T>) {
  return fc.oneof(
    { weight: 12, arbitrary: value },
    { weight: 1, arbitrary: fc.constant(NOT_KNOWN_YET) },
  )
}

export function maybe<T>(value: fc.Arbitrary<T>) {
  return fc.option(asked(value), { nil: undefined })
}

/** Some or all. */
export const who = fc.option(fc.constantFrom('novice', 'captain'), { nil: undefined, freq: 3 })
export const marshalling = asked(fc.constantFrom('isRest', 'isNotRest'))

export function rule(
  kind: Rule['kind'],
  value: Readonly<Record<string, fc.Arbitrary<unknown>>>,
): fc.Arbitrary<AnyRule> {
  return fc.record({
    kind: fc.constant(kind),
    value: fc.record(value).map(withoutUndefined),
  })
}

function withoutUndefined(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([, part]) => part !== undefined))
}
