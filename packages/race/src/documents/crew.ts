/** Who is in the team for this meeting. A person's id is the same in every meeting. */
import * as z from 'zod/mini'
import { duty, id, name } from '../entry/scalars.ts'

export const crewSchema = z.strictObject({
  people: z.array(z.strictObject({ id, name, duties: z.array(duty) })).check(z.maxLength(40)),
})
export type Crew = z.infer<typeof crewSchema>
export type CrewMember = Crew['people'][number]
