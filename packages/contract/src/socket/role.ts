/** Server → screen: what this device may do has changed. Revoked devices are disconnected after it. */
import * as z from 'zod/mini'
import { roleSchema } from '@pitlamp/race'
import { wallStandingSchema } from './wall.ts'

export const roleSaidSchema = z.object({
  role: z.union([roleSchema, z.literal('revoked')]),
  wall: z.optional(wallStandingSchema),
})
export type RoleSaid = z.infer<typeof roleSaidSchema>
