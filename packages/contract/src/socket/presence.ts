/** Server → screen: which screens are connected to this meeting. */
import * as z from 'zod/mini'
import { roleSchema, uuidV7 } from '@pitlamp/race'

export const presenceSchema = z.object({
  meeting: uuidV7,
  screens: z.array(z.object({ device: uuidV7, name: z.string(), role: roleSchema })),
})
export type Presence = z.infer<typeof presenceSchema>
