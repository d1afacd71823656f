/** Who is in the team for this meeting. A person's id is the same in every meeting. */
import * as z from 'zod/mini'
import { duty, durationMs, id, lineId, name, timeMs, words } from '../entry/scalars.ts'

/** A stretch of meeting time; open where an end is left out. */
const presence = z.strictObject({
  id: lineId,
  fromAt: z.optional(timeMs),
  toAt: z.optional(timeMs),
})

const person = z.strictObject({
  id,
  name,
  /** Duties this person can take; none named means all of them. */
  duties: z.array(duty),
  /** As the rules call them: novice, junior, captain … */
  categories: z.optional(z.array(name).check(z.maxLength(8))),
  /** When this person is there; all the time where nothing is said. */
  there: z.optional(z.array(presence).check(z.maxLength(20))),
  wishes: z.optional(words),
  note: z.optional(words),
  /** Lap time this person is good for, and how far laps spread around it, entered by hand. */
  paceMs: z.optional(durationMs),
  steadinessMs: z.optional(durationMs),
})
export const crewSchema = z.strictObject({ people: z.array(person).check(z.maxLength(40)) })
export type Crew = z.infer<typeof crewSchema>
export type CrewMember = Crew['people'][number]
