/** Entries of revoked devices, kept for the captain to decide on. */
import type { Entry } from '@pitlamp/race'
import { roleIn } from '../../access/role-in.ts'
import { deviceOf } from '../rows.ts'
import type { TrayTable } from '../tables.ts'
import type { AppendInput } from './append.ts'
import type { Trx } from './context.ts'

/** More than a whole race's presses; what a revoked device sends beyond it is dropped, or it could fill the disk. */
const KEPT_A_DEVICE = 1_000

export async function keepInTray(trx: Trx, input: AppendInput): Promise<void> {
  const { kept } = await trx
    .selectFrom('tray')
    .select((select) => select.fn.countAll<number>().as('kept'))
    .where('team', '=', input.team)
    .where('device', '=', input.device)
    .executeTakeFirstOrThrow()
  const device = await trx
    .selectFrom('device')
    .selectAll()
    .where('team', '=', input.team)
    .where('id', '=', input.device)
    .executeTakeFirstOrThrow()
  const role = roleIn(deviceOf(device), input.meeting)
  const rows = input.entries
    .slice(0, Math.max(0, KEPT_A_DEVICE - kept))
    .map((entry) => rowOf(input, entry, role))
  if (rows.length === 0) return
  await trx
    .insertInto('tray')
    .values(rows)
    .onConflict((conflict) => conflict.columns(['team', 'device', 'meeting', 'id']).doNothing())
    .execute()
}

function rowOf(input: AppendInput, entry: Entry, role: TrayTable['role']): TrayTable {
  return {
    team: input.team,
    meeting: input.meeting,
    id: entry.id,
    device: input.device,
    entry: JSON.stringify(entry),
    received_at: Math.round(input.nowMs),
    role,
    decided: null,
    decided_at: null,
  }
}
