/** How a crew device stands to the wall of its meeting: it may take it, or has it until the tablet is back. */
import * as z from 'zod/mini'

export const wallStandingSchema = z.enum(['mayTake', 'taken'])
export type WallStanding = z.infer<typeof wallStandingSchema>
