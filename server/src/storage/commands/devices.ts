/** What becomes of a device after it has joined. */
import type { ChangeDevice, Device } from '@pitlamp/contract'
import { held } from '../is-postgres.ts'
import { deviceOf } from '../rows.ts'
import type { DeviceTable } from '../tables.ts'
import type { Refused } from './access.ts'
import type { Done, Trx } from './context.ts'

export interface ChangeDeviceInput {
  readonly team: string
  readonly device: string
  readonly change: ChangeDevice
  readonly nowMs: number
}

export interface Changed {
  readonly device: Device
  /** The meeting whose wall it had and has no longer. */
  readonly wallGoneFrom?: string
}

export async function changeDevice(trx: Trx, input: ChangeDeviceInput): Promise<Changed | Refused> {
  const row = await held(trx, trx.selectFrom('device').selectAll())
    .where('team', '=', input.team)
    .where('id', '=', input.device)
    .executeTakeFirst()
  if (!row) return { refused: 'notFound' }
  const { change } = input
  const revoked_at =
    change.revoked === true ? (row.revoked_at ?? Math.round(input.nowMs)) : row.revoked_at
  const { mayTakeWallIn } = change
  if (typeof mayTakeWallIn === 'string' && !(await isOurs(trx, input.team, mayTakeWallIn))) {
    return { refused: 'otherMeeting' }
  }
  const changed = {
    name: change.name ?? row.name,
    role: change.role ?? row.role,
    revoked_at,
    ...wallAfter(row, change),
    changed_at: Math.round(input.nowMs),
  }
  await trx
    .updateTable('device')
    .set(changed)
    .where('team', '=', input.team)
    .where('id', '=', input.device)
    .execute()
  const had = row.wall_taken_at !== null ? (row.wall_meeting ?? undefined) : undefined
  const lost = changed.wall_taken_at === null || revoked_at !== null
  const wallGoneFrom = lost ? had : undefined
  return { device: deviceOf({ ...row, ...changed }), ...(wallGoneFrom && { wallGoneFrom }) }
}

type Wall = Pick<DeviceTable, 'wall_meeting' | 'wall_taken_at'>

/** Another role takes the wall away; so does another meeting, or none. */
function wallAfter(row: DeviceTable, { role, mayTakeWallIn }: ChangeDevice): Wall {
  if (role !== undefined && role !== row.role) return { wall_meeting: null, wall_taken_at: null }
  const { wall_meeting, wall_taken_at } = row
  if (mayTakeWallIn === undefined || mayTakeWallIn === wall_meeting) {
    return { wall_meeting, wall_taken_at }
  }
  return { wall_meeting: mayTakeWallIn, wall_taken_at: null }
}

async function isOurs(trx: Trx, team: string, meeting: string): Promise<boolean> {
  const found = await trx
    .selectFrom('meeting')
    .select('id')
    .where('team', '=', team)
    .where('id', '=', meeting)
    .executeTakeFirst()
  return found !== undefined
}

export async function deviceSeen(
  trx: Trx,
  input: { readonly team: string; readonly device: string; readonly nowMs: number },
): Promise<Done> {
  await trx
    .updateTable('device')
    .set({ seen_at: Math.round(input.nowMs) })
    .where('team', '=', input.team)
    .where('id', '=', input.device)
    .execute()
  return 'done'
}
