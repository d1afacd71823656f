/** Who is in the team for this meeting. A person's id is the same in every meeting. */
import * as z from 'zod/mini'
import { duty, durationMs, id, lineId, name, timeMs, words } from '../entry/scalars.ts'

/** A stretch of meeting time; open where an end is left out. */
const presence = z.strictObject({
  id: lineId,
  fromAt: z.optional(timeMs),
  toAt: z.optional(timeMs),
})

/** What somebody asks for; it gives way to rules. Instants are meeting time. */
const wish = z.discriminatedUnion('kind', [
  /** To drive only while another one has a duty too. */
  z.strictObject({ id: lineId, kind: z.literal('beside'), other: id }),
  z.strictObject({ id: lineId, kind: z.literal('after'), other: id }),
  z.strictObject({ id: lineId, kind: z.literal('before'), other: id }),
  z.strictObject({ id: lineId, kind: z.literal('notAtEnd'), which: z.enum(['first', 'last']) }),
  /** Not to drive between two instants: at night. */
  z.strictObject({ id: lineId, kind: z.literal('notBetween'), fromAt: timeMs, toAt: timeMs }),
  /** No more driving than this in the whole race. */
  z.strictObject({ id: lineId, kind: z.literal('noMoreThan'), atMostMs: durationMs }),
])
export type PersonWish = z.infer<typeof wish>

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
  /** One rest without a break that this person wishes for, between two instants where they are named. */
  restBlock: z.optional(
    z.strictObject({
      atLeastMs: durationMs,
      fromAt: z.optional(timeMs),
      toAt: z.optional(timeMs),
    }),
  ),
  /** Those a program can heed; `wishes` are for people. */
  wishList: z.optional(z.array(wish).check(z.maxLength(12))),
  note: z.optional(words),
  /** Lap time this person is good for, and how far laps spread around it, entered by hand. */
  paceMs: z.optional(durationMs),
  steadinessMs: z.optional(durationMs),
})
export const crewSchema = z.strictObject({ people: z.array(person).check(z.maxLength(40)) })
export type Crew = z.infer<typeof crewSchema>
export type CrewMember = Crew['people'][number]
