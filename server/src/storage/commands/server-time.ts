/** The one row the server's clock is kept in, and the probe of an ailing disk. */
import { bySize, withParameters } from './compiled.ts'
import type { Done, Trx } from './context.ts'

export interface KeptTime {
  /** Server time never falls below this again, unless the captain sets it. */
  readonly markMs: number
  /** What the machine's clock has to be moved by, as the captain set it. */
  readonly shiftMs: number
  readonly epoch: number
  /** Where several processes go by the database's clock: how far ahead of it they are. */
  readonly aheadMs?: number
}

const ROW = 1

/** An epoch that is over is not brought back by a process that has not heard of it yet. */
export async function keepTime(trx: Trx, input: KeptTime): Promise<Done> {
  const { markMs, shiftMs: shift_ms, epoch, aheadMs } = input
  const ahead_ms = aheadMs === undefined ? null : Math.round(aheadMs)
  const row = { mark_ms: Math.ceil(markMs), shift_ms, epoch, ahead_ms }
  await trx
    .insertInto('server_time')
    .values({ id: ROW, ...row })
    .onConflict((conflict) =>
      conflict.column('id').doUpdateSet(row).where('server_time.epoch', '<=', epoch),
    )
    .execute()
  return 'done'
}

const raise = bySize((trx) =>
  trx
    .updateTable('server_time')
    .set({ mark_ms: 0 })
    .where('id', '=', ROW)
    .where('epoch', '=', 0)
    .where('mark_ms', '<', 0)
    .compile(),
)

/** Raises the mark only: with every transaction, and once a second. */
export async function raiseMark(
  trx: Trx,
  input: { readonly markMs: number; readonly epoch: number },
): Promise<Done> {
  const markMs = Math.ceil(input.markMs)
  await trx.executeQuery(withParameters(raise(trx, 1), [markMs, ROW, input.epoch, markMs]))
  return 'done'
}

const FILLER = 'x'.repeat(64 * 1024)

/** Asks the disk for new room and gives it back in the next transaction, so that success means there is some. */
export async function fillProbe(trx: Trx): Promise<Done> {
  await trx.insertInto('probe').values({ filler: FILLER }).execute()
  return 'done'
}

export async function emptyProbe(trx: Trx): Promise<Done> {
  await trx.deleteFrom('probe').execute()
  return 'done'
}
