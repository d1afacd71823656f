/** What an append reads and writes beside the log itself. */
import { held } from '../is-postgres.ts'
import type { DeviceTable, MeetingTable } from '../tables.ts'
import type { Trx } from './context.ts'
import type { AppendInput } from './append.ts'
import { bySize, padded, parts, withParameters } from './compiled.ts'

const NAMES_A_STATEMENT = 256

const devicesOfSize = bySize((trx: Trx, size: number) =>
  trx.selectFrom('device').selectAll().where('id', 'in', Array<string>(size).fill('')).compile(),
)

/** The devices that send, read inside the transaction: their role and whether they still belong. By `team/id`. */
export async function devicesOf(
  trx: Trx,
  inputs: readonly AppendInput[],
): Promise<ReadonlyMap<string, DeviceTable>> {
  const found = new Map<string, DeviceTable>()
  const ids = [...new Set(inputs.map((input) => input.device))]
  for (const part of parts(ids, NAMES_A_STATEMENT)) {
    const list = padded(part)
    const { rows } = await trx.executeQuery(withParameters(devicesOfSize(trx, list.length), list))
    for (const row of rows as DeviceTable[]) found.set(`${row.team}/${row.id}`, row)
  }
  return found
}

const meetingsOfSize = bySize((trx: Trx, size: number) =>
  held(trx, trx.selectFrom('meeting').selectAll())
    .where('id', 'in', Array<string>(size).fill(''))
    .orderBy('id')
    .compile(),
)

/** Held until the transaction ends: `last_seq` is raised by one process at a time. */
export async function meetingsOf(
  trx: Trx,
  inputs: readonly AppendInput[],
): Promise<readonly MeetingTable[]> {
  const found: MeetingTable[] = []
  const ids = [...new Set(inputs.map((input) => input.meeting))].sort()
  for (const part of parts(ids, NAMES_A_STATEMENT)) {
    const list = padded(part)
    const { rows } = await trx.executeQuery(withParameters(meetingsOfSize(trx, list.length), list))
    found.push(...(rows as MeetingTable[]))
  }
  return found
}

const raise = bySize((trx: Trx) =>
  trx.updateTable('meeting').set({ last_seq: 0 }).where('id', '=', '').compile(),
)

export async function raiseLastSeq(trx: Trx, meeting: string, lastSeq: number): Promise<void> {
  await trx.executeQuery(withParameters(raise(trx, 1), [lastSeq, meeting]))
}
