/** The one place where it is decided who gets in: every route and every socket asks here, and here `may` is read. */
import type { Meeting, Refusal } from '@pitlamp/contract'
import { may, type Action } from '@pitlamp/race'
import type { Holder } from '../storage/reads/access.ts'
import type { Storage } from '../storage/port.ts'
import { hashOf } from './tokens.ts'

export const DEVICE_COOKIE = 'pitlamp_device'

/**
 * What a route asks for. `anyone`: no device needed. `sender`: any device that ever joined, for what it has
 * recorded; the writer decides, entry by entry, and puts a revoked device's into the tray.
 */
export type Asks = 'anyone' | 'sender' | Action

export function refusalFor(asks: Asks, holder: Holder | undefined): Refusal | undefined {
  if (asks === 'anyone') return undefined
  if (!holder) return 'notJoined'
  if (asks === 'sender') return undefined
  if (holder.device.revokedAt !== undefined) return 'revoked'
  return may(holder.device.role, asks) ? undefined : 'roleMayNot'
}

/** The meeting, where it is one of the holder's team: what another team has is not there, whoever asks. */
export async function ownMeeting(
  { read }: Pick<Storage, 'read'>,
  holder: Holder,
  meeting: string,
): Promise<Meeting | undefined> {
  return read.meeting(holder.team.id, meeting)
}

/** Who holds this token; undefined for none or one that was never given out. */
export async function holderOf(
  storage: Storage,
  token: string | undefined,
): Promise<Holder | undefined> {
  return token === undefined ? undefined : storage.read.holderOf(hashOf(token))
}
