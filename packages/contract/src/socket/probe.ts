/** Screen → server every two seconds: heartbeat and clock sample (RFC 5905's four timestamps, t3 is the screen's). */
import * as z from 'zod/mini'

export const probeSchema = z.strictObject({ t0: z.number() })
export type Probe = z.infer<typeof probeSchema>

export const probeAnswerSchema = z.object({
  t0: z.number(),
  /** Server time in ms, fractions included: taken on arrival and just before answering. */
  t1: z.number(),
  t2: z.number(),
  epoch: z.int(),
})
export type ProbeAnswer = z.infer<typeof probeAnswerSchema>
