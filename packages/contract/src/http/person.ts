/** People of the team, the same in every meeting. */
import * as z from 'zod/mini'
import { uuidV7 } from '@pitlamp/race'

export const personSchema = z.strictObject({
  id: uuidV7,
  name: z.string().check(z.trim(), z.minLength(1), z.maxLength(80)),
})
export type Person = z.infer<typeof personSchema>
export const peopleSchema = z.object({ people: z.array(personSchema) })
