/** Server → screen: which screens are connected to this meeting, and which crew devices have its wall. */
import * as z from 'zod/mini'
import { roleSchema, uuidV7 } from '@pitlamp/race'
import { deviceReportSchema } from './report.ts'

const named = { device: uuidV7, name: z.string() }

export const presenceSchema = z.object({
  meeting: uuidV7,
  screens: z.array(
    z.object({ ...named, role: roleSchema, report: z.optional(deviceReportSchema) }),
  ),
  /** Also while they are not connected. */
  wallTaken: z.optional(z.array(z.object(named))),
})
export type Presence = z.infer<typeof presenceSchema>
