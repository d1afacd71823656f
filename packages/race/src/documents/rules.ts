/** The organiser's rules as data: the programme, and a list of rules that each keep their clause and words. */
import * as z from 'zod/mini'
import { count, durationMs, lineId, name, timeMs, words } from '../entry/scalars.ts'
import { ruleSchema } from '../rules/index.ts'

const ITEM_KINDS = [
  'briefing',
  'practice',
  'qualifying',
  'scrutineering',
  'warmUp',
  'lineUp',
  'laneChange',
  'break',
] as const

export const segmentLength = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('time'), lengthMs: durationMs }),
  z.strictObject({ by: z.literal('laps'), laps: count }),
])
export type SegmentLength = z.infer<typeof segmentLength>

const segmentItem = z.strictObject({
  id: lineId,
  kind: z.literal('segment'),
  name: z.optional(name),
  length: segmentLength,
  /** On fixed lanes: its lane, a sit-out, or a lane that is not drawn yet. */
  lane: z.optional(z.union([count, z.enum(['sitOut', 'notDrawnYet'])])),
  /** Segments of one number are a stage, scored on its own. */
  stage: z.optional(count),
  /** Meeting time the organiser names for it, where he names one. */
  plannedAt: z.optional(timeMs),
})
const otherItem = z.strictObject({
  id: lineId,
  kind: z.enum(ITEM_KINDS),
  name: z.optional(name),
  lengthMs: z.optional(durationMs),
  plannedAt: z.optional(timeMs),
})
export const programmeItem = z.discriminatedUnion('kind', [segmentItem, otherItem])
export type ProgrammeItem = z.infer<typeof programmeItem>
export type SegmentItem = z.infer<typeof segmentItem>

export const regulationsSchema = z.strictObject({
  name,
  place: z.optional(name),
  /** IANA name; every time on every screen is the venue's. */
  timeZone: z.string().check(z.minLength(1), z.maxLength(60)),
  /** Meeting time of the midnight at the venue that hours of the clock are counted from, day after day. */
  midnightAt: z.optional(timeMs),
  programme: z.array(programmeItem).check(z.maxLength(200)),
  rules: z.array(ruleSchema).check(z.maxLength(200)),
  note: z.optional(words),
})
export type Regulations = z.infer<typeof regulationsSchema>
