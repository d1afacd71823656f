/** Joining, devices and invitations. */
import * as z from 'zod/mini'
import { roleSchema, timeMs, uuidV7 } from '@pitlamp/race'

const label = z.string().check(z.trim(), z.minLength(1), z.maxLength(60))

export const joinSchema = z.strictObject({
  code: z.string().check(z.minLength(4), z.maxLength(60)),
  /** The device makes its own id once and keeps it. */
  device: uuidV7,
  name: label,
})
export type Join = z.infer<typeof joinSchema>

export const meSchema = z.object({
  device: z.object({ id: uuidV7, name: z.string(), role: roleSchema }),
  team: z.object({ id: uuidV7, name: z.string() }),
})
export type Me = z.infer<typeof meSchema>

export const askInviteSchema = z.strictObject({
  role: roleSchema,
  /** A QR serves any number of devices for two minutes; a typed code one device within ten. */
  as: z.enum(['qr', 'typed']),
})
export type AskInvite = z.infer<typeof askInviteSchema>

export const inviteSchema = z.object({
  code: z.string(),
  role: roleSchema,
  validUntil: timeMs,
  /** Where a device opens it, one for each address this server is reached at. */
  links: z.array(z.string()),
})
export type Invite = z.infer<typeof inviteSchema>

export const deviceSchema = z.object({
  id: uuidV7,
  name: z.string(),
  role: roleSchema,
  joinedAt: timeMs,
  seenAt: z.optional(timeMs),
  revokedAt: z.optional(timeMs),
  /** The meeting in which the captain lets this crew device take the wall, and since when it has it. */
  wall: z.optional(z.object({ meeting: uuidV7, takenAt: z.optional(timeMs) })),
})
export type Device = z.infer<typeof deviceSchema>
export const devicesSchema = z.object({
  devices: z.array(deviceSchema),
  /** Server time of the answer: what `seenAt` is measured from. */
  nowMs: timeMs,
})

export const changeDeviceSchema = z.strictObject({
  name: z.optional(label),
  role: z.optional(roleSchema),
  revoked: z.optional(z.literal(true)),
  /** The meeting in which it may take the wall; null: in none any more, and a wall it has is taken back. */
  mayTakeWallIn: z.optional(z.nullable(uuidV7)),
})
export type ChangeDevice = z.infer<typeof changeDeviceSchema>
