/** What becomes of a device after it has joined. */
import type { ChangeDevice, Device } from '@pitlamp/contract'
import { deviceOf } from '../rows.ts'
import type { Refused } from './access.ts'
import type { Done, Trx } from './context.ts'

export interface ChangeDeviceInput {
  readonly team: string
  readonly device: string
  readonly change: ChangeDevice
  readonly nowMs: number
}

export async function changeDevice(
  trx: Trx,
  input: ChangeDeviceInput,
): Promise<{ readonly device: Device } | Refused> {
  const row = await trx
    .selectFrom('device')
    .selectAll()
    .where('team', '=', input.team)
    .where('id', '=', input.device)
    .executeTakeFirst()
  if (!row) return { refused: 'notFound' }
  const { change } = input
  const revoked_at =
    change.revoked === true ? (row.revoked_at ?? Math.round(input.nowMs)) : row.revoked_at
  const changed = { name: change.name ?? row.name, role: change.role ?? row.role, revoked_at }
  await trx
    .updateTable('device')
    .set(changed)
    .where('team', '=', input.team)
    .where('id', '=', input.device)
    .execute()
  return { device: deviceOf({ ...row, ...changed }) }
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
