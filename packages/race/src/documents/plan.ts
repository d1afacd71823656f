/** The plan: who has which duty from when, and which stops are meant. Positions are (segment, race clock). */
import * as z from 'zod/mini'
import { clockMs, count, duty, durationMs, id, lineId, name } from '../entry/scalars.ts'

export const planSpan = z.strictObject({
  id: lineId,
  person: id,
  duty,
  segment: lineId,
  fromMs: clockMs,
  toMs: clockMs,
  post: z.optional(name),
  lane: z.optional(count),
})
export type PlanSpan = z.infer<typeof planSpan>

export const planStop = z.strictObject({
  id: lineId,
  segment: lineId,
  atMs: clockMs,
  mandatory: z.boolean(),
  task: z.optional(name),
})
export type PlanStop = z.infer<typeof planStop>

export const planSchema = z.strictObject({
  spans: z.array(planSpan).check(z.maxLength(400)),
  stops: z.array(planStop).check(z.maxLength(100)),
  captain: z.strictObject({
    /** GO comes this long after the minimum. */
    goMarginMs: durationMs,
    /** Ask for a reading of the hall's clock once ours may be further off than this. */
    askForClockAtMs: durationMs,
    /** Hot, glued and solvent work inside a running countdown. */
    hotWorkInStops: z.boolean(),
  }),
})
export type Plan = z.infer<typeof planSchema>

/** What a captain starts from: common practice, no source. */
export const CAPTAINS_DEFAULTS: Plan['captain'] = {
  goMarginMs: 2_000,
  askForClockAtMs: 5_000,
  hotWorkInStops: false,
}
