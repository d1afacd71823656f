/** Tickets and wrong codes, where several processes let devices in. */
import { held } from '../is-postgres.ts'
import type { Done, Trx } from './context.ts'

export interface TicketInput {
  readonly codeHash: string
  /** JSON. */
  readonly ticket: string
  readonly validUntil: number
  readonly nowMs: number
}

export async function keepTicket(trx: Trx, input: TicketInput): Promise<Done> {
  await trx.deleteFrom('ticket').where('valid_until', '<', Math.round(input.nowMs)).execute()
  const { codeHash: code_hash, ticket } = input
  const row = { code_hash, ticket, valid_until: Math.round(input.validUntil) }
  await trx.insertInto('ticket').values(row).execute()
  return 'done'
}

export async function dropTicket(
  trx: Trx,
  { codeHash }: Pick<TicketInput, 'codeHash'>,
): Promise<Done> {
  await trx.deleteFrom('ticket').where('code_hash', '=', codeHash).execute()
  return 'done'
}

export interface TryInput {
  readonly addressHash: string
  readonly most: number
  readonly pauseMs: number
  readonly nowMs: number
}

/** Counts a try before its outcome is known. @returns false where this address waits */
export async function beginTry(trx: Trx, input: TryInput): Promise<boolean> {
  const nowMs = Math.round(input.nowMs)
  const { addressHash: address_hash } = input
  const before = await held(trx, trx.selectFrom('tries').selectAll())
    .where('address_hash', '=', address_hash)
    .executeTakeFirst()
  const wrong = before && before.waits_until > nowMs ? before.wrong : 0
  if (wrong >= input.most) return false
  const row = { wrong: wrong + 1, waits_until: nowMs + input.pauseMs }
  // Two first tries at once: both count.
  await trx
    .insertInto('tries')
    .values({ address_hash, ...row })
    .onConflict((conflict) =>
      conflict
        .column('address_hash')
        .doUpdateSet((set) => ({ ...row, wrong: before ? row.wrong : set('tries.wrong', '+', 1) })),
    )
    .execute()
  return true
}

/** The code was right: what came before is forgotten, and with it what nobody waits for any more. */
export async function forgiveTries(
  trx: Trx,
  { addressHash, nowMs }: Pick<TryInput, 'addressHash' | 'nowMs'>,
): Promise<Done> {
  await trx.deleteFrom('tries').where('address_hash', '=', addressHash).execute()
  await trx.deleteFrom('tries').where('waits_until', '<', Math.round(nowMs)).execute()
  return 'done'
}
