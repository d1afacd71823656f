/**
 * What every kind of rule is made of: its parts, its clause, and the organiser's words. A rule left out of
 * the list is absent: not checked, and the screen says so. A part that may still be asked at the briefing
 * is wrapped in `orNotKnown`.
 */
import * as z from 'zod/mini'
import { lineId, name, words } from '../entry/scalars.ts'

export const NOT_KNOWN_YET = 'notKnownYet'
export type NotKnownYet = typeof NOT_KNOWN_YET

export function orNotKnown<P extends z.core.$ZodType>(part: P) {
  return z.union([z.literal(NOT_KNOWN_YET), part])
}

/** The part, or undefined while it is not known. */
export function known<P>(part: P | NotKnownYet | undefined): P | undefined {
  return part === NOT_KNOWN_YET ? undefined : part
}

export function rule<K extends string, V extends z.core.$ZodType>(kind: K, value: V) {
  return z.strictObject({
    id: lineId,
    kind: z.literal(kind),
    value,
    clause: z.optional(name),
    words: z.optional(words),
  })
}
