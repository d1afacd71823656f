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
  /** Decided by hand: what is worked out is worked out around it. */
  pinned: z.optional(z.literal(true)),
})
export type PlanSpan = z.infer<typeof planSpan>

export const planStop = z.strictObject({
  id: lineId,
  segment: lineId,
  atMs: clockMs,
  mandatory: z.boolean(),
  task: z.optional(name),
  pinned: z.optional(z.literal(true)),
})
export type PlanStop = z.infer<typeof planStop>

export const planSchema = z.strictObject({
  spans: z.array(planSpan).check(z.maxLength(400)),
  stops: z.array(planStop).check(z.maxLength(100)),
  /** All these people do is decided by hand: their lines, and nothing else for them. */
  keptPeople: z.optional(z.array(id).check(z.maxLength(100))),
  captain: z.strictObject({
    /** GO comes this long after the minimum. */
    goMarginMs: durationMs,
    /** Ask for a reading of the hall's clock once ours may be further off than this. */
    askForClockAtMs: durationMs,
    /** Hot, glued and solvent work inside a running countdown. */
    hotWorkInStops: z.boolean(),
    /** How long before anything falls due the devices speak up; 0 is when it does. */
    alertsMs: z.optional(z.array(durationMs).check(z.maxLength(12))),
    /** A call nobody answered is repeated after each of these. */
    callRepeatMs: z.optional(durationMs.check(z.minimum(1_000))),
    /** After each of these it passes to the next person, at last to the wall. */
    callPassOnMs: z.optional(durationMs.check(z.minimum(1_000))),
    /** How long a provisional result may be protested. */
    protestMs: z.optional(durationMs),
  }),
})
export type Plan = z.infer<typeof planSchema>

/** What a captain starts from: common practice, no source. */
export const CAPTAINS_DEFAULTS: Plan['captain'] = {
  goMarginMs: 2_000,
  askForClockAtMs: 5_000,
  hotWorkInStops: false,
}

/** What holds where a captain says nothing of calls: common practice, no source. */
export const CALL_DEFAULTS = { callRepeatMs: 20_000, callPassOnMs: 60_000 } as const
