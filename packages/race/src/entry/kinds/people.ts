/** Who has which duty, who is where, and what the wall asks of them. */
import * as z from 'zod/mini'
import { clockMs, duty, durationMs, id, lineId, move, name, timeMs, words } from '../scalars.ts'

export const peopleKinds = {
  /** One press carries every move, in the order in which people move. */
  'handover.1': z.strictObject({ moves: z.array(move).check(z.minLength(1), z.maxLength(20)) }),
  /** Who answers for a car that is not running. */
  'inControl.1': z.strictObject({ person: id }),
  'dutyTaken.1': z.strictObject({ person: id, duty, post: z.optional(name) }),
  'dutyLeft.1': z.strictObject({ person: id }),
  'availability.1': z.strictObject({
    person: id,
    state: z.enum(['here', 'late', 'away', 'unwell', 'wantsRelief']),
    until: z.optional(timeMs),
  }),
  /** A wake-up call falls due later than it is made. */
  'call.1': z.strictObject({ person: id, words, dueAt: z.optional(timeMs) }),
  'answer.1': z.strictObject({ call: id, answer: z.enum(['heard', 'coming', 'cannot']) }),
  /** The driver stays out: the handover the plan has at this race clock comes so much later. Several add up. */
  'stayOut.1': z.strictObject({ segment: lineId, boundaryMs: clockMs, byMs: durationMs }),
} as const
