/** A rotation worked out: what a screen asks for, and the lines that come back while it is being worked on. */
import * as z from 'zod/mini'
import { planSchema } from '@pitlamp/race'

const HOUR_MS = 3_600_000
const everyMs = z.int().check(z.minimum(60_000), z.maximum(24 * HOUR_MS))

export const workOutSchema = z.strictObject({
  /** The captain's drafts, or what the meeting goes by. In a race both stand on what was driven. */
  from: z.enum(['drafts', 'inForce']),
  /** A plan, the same again around what was driven, or what each rule and wish of a plan costs. */
  want: z.enum(['plan', 'again', 'costs']),
  balance: z.strictObject({
    /** So much more or less than the equal share costs nothing. */
    toleranceMs: z.int().check(z.minimum(0), z.maximum(24 * HOUR_MS)),
    /** Laps given up for each hour of one driver beyond that: 0 is most laps. */
    lapsPerHour: z.int().check(z.minimum(0), z.maximum(1_000)),
  }),
  /** Mandatory stops are chosen at multiples of this; left out, those of the plan stand. */
  stopEveryMs: z.optional(everyMs),
  /** Duties may change at multiples of this while the car runs. */
  changeEveryMs: z.optional(everyMs),
  /** Duties that somebody holds all the time, besides those the rules ask for. */
  duties: z.array(z.enum(['post', 'wall', 'bench'])).check(z.maxLength(3)),
})
export type WorkOut = z.infer<typeof workOutSchema>

const laps = z.object({ expected: z.number(), from: z.number(), to: z.number() })

const worked = z.object({
  kind: z.literal('worked'),
  as: z.enum(['plan', 'fewestChanges', 'mostLaps']),
  plan: planSchema,
  /** Of what is still to come, four times out of five; left out where nobody's pace is known. */
  laps: z.optional(laps),
  /** `best` and, for stops on the grid that was looked at, `bestOnGrid` are proved; `within` is not. */
  proof: z.enum(['best', 'bestOnGrid', 'within']),
  /** How far the best can be away; left out where nothing is known of it. */
  gapLaps: z.optional(z.number()),
  /** Lines that the plan before it did not have. */
  changed: z.int(),
  /** Against the plan as it stands, where that breaks no rule; laps this one is ahead by. */
  against: z.optional(
    z.object({
      ...{ laps: z.number(), fromLaps: z.number(), toLaps: z.number() },
      noRealDifference: z.boolean(),
      fairer: z.optional(z.enum(['this', 'theOther'])),
    }),
  ),
  /** What it stands on and does not know. */
  notes: z.array(z.string()),
})
export type Worked = z.infer<typeof worked>

const cost = z.object({
  kind: z.literal('cost'),
  id: z.string(),
  sentence: z.string(),
  /** At least and at most; left out where it could not be told. */
  laps: z.optional(z.object({ least: z.number(), most: z.number() })),
})
export type Cost = z.infer<typeof cost>

const impossible = z.object({
  kind: z.literal('impossible'),
  /** Without these, and no fewer, there is a plan. */
  giveUp: z.array(z.string()),
  /** These cannot all hold, and without any one of them the others can. */
  collide: z.array(z.string()),
  /** Who there is to keep them. */
  people: z.array(z.string()),
})
export type Impossible = z.infer<typeof impossible>

const notDone = z.object({
  kind: z.literal('notDone'),
  /** `ourFault`: what was worked out breaks a rule, and is not offered. */
  why: z.enum(['faulty', 'stopped', 'ourFault']),
  sentences: z.array(z.string()),
})
export type NotDone = z.infer<typeof notDone>

const working = z.object({
  kind: z.literal('working'),
  on: z.enum(['plan', 'why', 'costs']),
  /** The best so far, and what no plan can be better than. */
  incumbentLaps: z.optional(z.number()),
  boundLaps: z.optional(z.number()),
})
export type Working = z.infer<typeof working>

/** One JSON line each, in the order in which they come; the connection closed from the other side is the cancel. */
export const workLineSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('waiting') }),
  working,
  worked,
  cost,
  impossible,
  notDone,
])
export type WorkLine = z.infer<typeof workLineSchema>
