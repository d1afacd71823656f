/** What revoked devices recorded before they were taken out: the captain takes it into the log or leaves it aside. */
import * as z from 'zod/mini'
import { roleSchema, timeMs, uuidV7 } from '@pitlamp/race'

export const trayLineSchema = z.object({
  /** The entry's. */
  id: uuidV7,
  meeting: uuidV7,
  device: uuidV7,
  /** What the device was called, and the role it had when this came in. */
  name: z.string(),
  role: roleSchema,
  receivedAt: timeMs,
  /** As the device sent it. */
  entry: z.unknown(),
  /** Absent until the captain has decided. What is left aside stays and may still be taken in. */
  decided: z.optional(z.object({ what: z.enum(['takenIn', 'leftAside']), at: timeMs })),
})
export type TrayLine = z.infer<typeof trayLineSchema>

/** Undecided first, in the order in which they came; at most a page. */
export const traySchema = z.object({ lines: z.array(trayLineSchema) })
export type Tray = z.infer<typeof traySchema>

/** Entries of one device for one meeting, by id: those the captain has seen. */
export const decideTraySchema = z.strictObject({
  meeting: uuidV7,
  device: uuidV7,
  entries: z.array(uuidV7).check(z.minLength(1), z.maxLength(500)),
})
export type DecideTray = z.infer<typeof decideTraySchema>

/** The ids that are left aside now; what was taken in before stays in the log. */
export const leftAsideSchema = z.object({ left: z.array(uuidV7) })
export type LeftAside = z.infer<typeof leftAsideSchema>
