/** The car entered, the nine faults its crew wants under the thumb, and what is done to it between segments. */
import * as z from 'zod/mini'
import { name } from '../entry/scalars.ts'

export const carSchema = z.strictObject({
  name,
  faultTiles: z.array(name).check(z.maxLength(9)),
  /** In this order. */
  betweenWork: z.optional(z.array(name).check(z.maxLength(30))),
})
export type Car = z.infer<typeof carSchema>
