/** The plan for people who have not joined: a link to it, and what who has the link sees. */
import * as z from 'zod/mini'
import { DUTIES, timeMs, uuidV7 } from '@pitlamp/race'

export const planLinkSchema = z.object({
  /** Said this once and kept as a hash only. It stands behind the # of the link, so it reaches no log. */
  code: z.string(),
  /** The page of the plan, one link for each address this server is reached at. */
  links: z.array(z.string()),
})
export type PlanLink = z.infer<typeof planLinkSchema>

/** How many links of the meeting opened its plan until now and do no longer. */
export const planLinksRevokedSchema = z.object({ revoked: z.int() })
export type PlanLinksRevoked = z.infer<typeof planLinksRevokedSchema>

/** Asks for the plan behind a code, or for its calendar file; of one person where one is named. */
export const openPlanSchema = z.strictObject({
  code: z.string().check(z.minLength(4), z.maxLength(60)),
  person: z.optional(uuidV7),
})
export type OpenPlan = z.infer<typeof openPlanSchema>

const segment = z.object({
  id: z.string(),
  name: z.optional(z.string()),
  startsAt: timeMs,
  /** Absent where nothing tells, as with segments counted in laps. */
  endsAt: z.optional(timeMs),
})

const span = z.object({
  id: z.string(),
  person: uuidV7,
  duty: z.enum(DUTIES),
  segment: z.string(),
  fromAt: timeMs,
  toAt: timeMs,
  post: z.optional(z.string()),
  lane: z.optional(z.int()),
})

const stop = z.object({
  id: z.string(),
  segment: z.string(),
  at: timeMs,
  mandatory: z.boolean(),
  task: z.optional(z.string()),
})

/** The plan as it stands, nothing else of the meeting. All times are meeting time, those ahead are about. */
export const sharedPlanSchema = z.object({
  meeting: z.object({
    name: z.string(),
    place: z.optional(z.string()),
    /** IANA name; UTC while there are no rules that name one. */
    timeZone: z.string(),
  }),
  asOf: timeMs,
  /** False while the plan is a draft. */
  adopted: z.boolean(),
  /** The crew, whether or not one person was asked for. */
  people: z.array(z.object({ id: uuidV7, name: z.string() })),
  segments: z.array(segment),
  /** In order of beginning. */
  spans: z.array(span),
  stops: z.array(stop),
})
export type SharedPlan = z.infer<typeof sharedPlanSchema>
