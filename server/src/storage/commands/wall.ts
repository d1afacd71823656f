/** The wall of a meeting on a crew device: taken where the captain has let it, and given or taken back. */
import type { Device } from '@pitlamp/contract'
import { may } from '@pitlamp/race'
import { held } from '../is-postgres.ts'
import { deviceOf } from '../rows.ts'
import type { DeviceTable } from '../tables.ts'
import type { Refused } from './access.ts'
import type { Trx } from './context.ts'

export interface WallInput {
  readonly team: string
  readonly device: string
  readonly meeting: string
  readonly nowMs: number
}

export type WallAnswer = { readonly device: Device } | Refused

/** Taking it twice is taking it once. */
export async function takeWall(trx: Trx, input: WallInput): Promise<WallAnswer> {
  const row = await deviceRow(trx, input)
  if (!row) return { refused: 'notFound' }
  if (row.revoked_at !== null) return { refused: 'revoked' }
  const given = row.wall_meeting === input.meeting && may(row.role, { do: 'takeWall' })
  if (!given) return { refused: 'wallNotGiven' }
  const wall_taken_at = row.wall_taken_at ?? Math.round(input.nowMs)
  return setTaken(trx, row, { wall_taken_at, changed_at: Math.round(input.nowMs) })
}

/** The device is crew again; it may take the wall anew. One that does not have it stays as it is. */
export async function returnWall(trx: Trx, input: WallInput): Promise<WallAnswer> {
  const row = await deviceRow(trx, input)
  if (!row) return { refused: 'notFound' }
  if (row.wall_meeting !== input.meeting) return { device: deviceOf(row) }
  return setTaken(trx, row, { wall_taken_at: null, changed_at: Math.round(input.nowMs) })
}

async function deviceRow(trx: Trx, { team, device }: WallInput): Promise<DeviceTable | undefined> {
  return held(trx, trx.selectFrom('device').selectAll())
    .where('team', '=', team)
    .where('id', '=', device)
    .executeTakeFirst()
}

async function setTaken(
  trx: Trx,
  row: DeviceTable,
  set: Pick<DeviceTable, 'wall_taken_at' | 'changed_at'>,
): Promise<WallAnswer> {
  await trx
    .updateTable('device')
    .set(set)
    .where('team', '=', row.team)
    .where('id', '=', row.id)
    .execute()
  return { device: deviceOf({ ...row, ...set }) }
}
