/** The car entered, and the nine faults its crew wants under the thumb. */
import * as z from 'zod/mini'
import { name } from '../entry/scalars.ts'

export const carSchema = z.strictObject({
  name,
  faultTiles: z.array(name).check(z.maxLength(9)),
})
export type Car = z.infer<typeof carSchema>
