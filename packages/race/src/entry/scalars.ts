/** Values that many bodies share. Durations are whole milliseconds, gauge readings whole thousandths. */
import * as z from 'zod/mini'
import { timeMs, uuidV7 } from './envelope.ts'

export const id = uuidV7
export { timeMs }

/** A duration that may be zero: at most ten days. */
export const durationMs = z.int().check(z.minimum(0), z.maximum(864_000_000))
/** A shift forwards or backwards. */
export const shiftMs = z.int().check(z.minimum(-864_000_000), z.maximum(864_000_000))
/** Position on a segment's race clock: 0 at green. */
export const clockMs = durationMs
/** A name or label a person reads. */
export const name = z.string().check(z.trim(), z.minLength(1), z.maxLength(80))
/** Words a person typed or a ruling read out. */
export const words = z.string().check(z.maxLength(2000))
export const count = z.int().check(z.minimum(0), z.maximum(1_000_000))
/** Ids inside documents: made by the screen that adds the line, stable while the line lives. */
export const lineId = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,40}$/))

export const DUTIES = ['controller', 'post', 'wall', 'bench', 'offDuty'] as const
export const duty = z.enum(DUTIES)
export type Duty = z.infer<typeof duty>

/** One step of a handover: this person takes this duty. A handover is an ordered list of them. */
export const move = z.strictObject({
  person: id,
  duty,
  /** The marshal's post, as the hall numbers it. */
  post: z.optional(name),
  lane: z.optional(count),
})
export type Move = z.infer<typeof move>
