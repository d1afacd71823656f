/**
 * What the parts of a rule can be. Each names how it is written and carries its schema; screens choose by
 * `is` how to show and change it.
 */
import * as z from 'zod/mini'
import { clockMs, count as counted, durationMs, lineId, name } from '../entry/scalars.ts'
import { orNotKnown } from './shape.ts'

export interface Part<S extends z.core.$ZodType = z.core.$ZodType> {
  readonly is:
    | 'duration'
    | 'count'
    | 'share'
    | 'words'
    | 'category'
    | 'clockTime'
    | 'segments'
    | 'windows'
    | 'counts'
    | 'names'
    | 'yesNo'
    | 'choice'
    | 'choices'
  readonly schema: S
  /** A length that is said in seconds: `0:45` is read as minutes and seconds. */
  readonly plain?: 's'
  /** What may be chosen. */
  readonly of?: readonly string[]
  /** It may be not known yet, and is then asked at the briefing. */
  readonly asked?: true
  /** The rule stands without it. */
  readonly optional?: true
}

/** Whole milliseconds. */
export const duration = { is: 'duration', schema: durationMs } as const satisfies Part
/** The same, of a length that people say in seconds. */
export const seconds = { ...duration, plain: 's' } as const satisfies Part
export const count = { is: 'count', schema: counted } as const satisfies Part
/** Whole thousandths: 600 is 60 %. */
export const share = {
  is: 'share',
  schema: z.int().check(z.minimum(0), z.maximum(1_000)),
} as const satisfies Part
export const words = { is: 'words', schema: name } as const satisfies Part
/** A category of people, as the crew names it. */
export const category = { is: 'category', schema: name } as const satisfies Part
/** Milliseconds since midnight at the venue. */
export const clockTime = {
  is: 'clockTime',
  schema: z.int().check(z.minimum(0), z.maximum(86_399_999)),
} as const satisfies Part
export const yesNo = { is: 'yesNo', schema: z.boolean() } as const satisfies Part
export const segments = {
  is: 'segments',
  schema: z.array(lineId).check(z.maxLength(200)),
} as const satisfies Part
export const counts = {
  is: 'counts',
  schema: z.array(counted).check(z.maxLength(100)),
} as const satisfies Part
/** Several names, in an order that means something. */
export const names = {
  is: 'names',
  schema: z.array(name).check(z.maxLength(40)),
} as const satisfies Part
/** Stretches of segments' race clocks. */
export const windows = {
  is: 'windows',
  schema: z
    .array(z.strictObject({ id: lineId, segment: lineId, fromMs: clockMs, toMs: clockMs }))
    .check(z.maxLength(100)),
} as const satisfies Part

export function choice<const C extends readonly [string, ...string[]]>(...of: C) {
  return { is: 'choice', of, schema: z.enum(of) } as const
}

/** Several of them, in an order that means something. */
export function choices<const C extends readonly [string, ...string[]]>(...of: C) {
  return { is: 'choices', of, schema: z.array(z.enum(of)).check(z.maxLength(of.length)) } as const
}

export function asked<P extends Part>(part: P): Asked<P> {
  return { ...part, asked: true, schema: orNotKnown<P['schema']>(part.schema) }
}

export function maybe<P extends Part>(part: P): Maybe<P> {
  return { ...part, optional: true, schema: z.optional<P['schema']>(part.schema) }
}

type Asked<P extends Part> = Omit<P, 'schema'> & {
  readonly asked: true
  readonly schema: ReturnType<typeof orNotKnown<P['schema']>>
}

type Maybe<P extends Part> = Omit<P, 'schema'> & {
  readonly optional: true
  readonly schema: z.ZodMiniOptional<P['schema']>
}
