/** What happens to the car: stops, incidents, faults and their repair, parts, measurements, energy. */
import * as z from 'zod/mini'
import { count, durationMs, id, lineId, move, name, words } from '../scalars.ts'

const workDone = z.strictObject({
  what: name,
  fault: z.optional(id),
  done: z.boolean(),
})

export const INCIDENTS = ['deSlot', 'wrongLane', 'contact', 'stuck', 'other'] as const

export const carKinds = {
  /** The car comes in. A stop has up to four moments; each is recorded if somebody saw it. */
  'stopIn.1': z.strictObject({
    moment: z.enum(['pitEntry', 'stopped']),
    /** The plan's stop this serves, where it serves one. */
    planned: z.optional(lineId),
  }),
  /** The car goes out, with what was done and who now has which duty. */
  'stopOut.1': z.strictObject({
    moment: z.enum(['leaving', 'pitExit']),
    work: z.optional(z.array(workDone).check(z.maxLength(30))),
    moves: z.optional(z.array(move).check(z.maxLength(20))),
  }),
  'incident.1': z.strictObject({
    what: z.enum(INCIDENTS),
    where: z.optional(name),
    words: z.optional(words),
  }),
  /** The time is stamped at the press; the rest may be said later by a correction. */
  'faultNoted.1': z.strictObject({
    fault: name,
    causedBy: z.optional(z.enum(['marshal', 'otherCar', 'ours'])),
    words: z.optional(words),
  }),
  'repairStarted.1': z.strictObject({ fault: id }),
  'repairPaused.1': z.strictObject({ fault: id }),
  'repairFinished.1': z.strictObject({ fault: id, words: z.optional(words) }),
  /** The fault will not be mended in this race. */
  'faultLeft.1': z.strictObject({ fault: id, words: z.optional(words) }),
  'partFitted.1': z.strictObject({ position: name, part: name, allowance: z.optional(name) }),
  'partRemoved.1': z.strictObject({ position: name, part: name }),
  'carExchanged.1': z.strictObject({ car: name }),
  /** A reading of gauge or scales: thousandths of its unit, so 1.05 mm is 1050. */
  'measured.1': z.strictObject({
    quantity: name,
    unit: z.enum(['mm', 'g', '°C', 'V']),
    valueMilli: z.int().check(z.minimum(-100_000_000), z.maximum(100_000_000)),
  }),
  'inspected.1': z.strictObject({ what: name, inOrder: z.boolean(), words: z.optional(words) }),
  'energy.1': z.strictObject({
    what: z.enum(['read', 'filled']),
    lapsLeft: z.optional(count),
    timeLeftMs: z.optional(durationMs),
  }),
  'workTicked.1': z.strictObject({ work: name, done: z.boolean() }),
} as const
