/** The captain decides on the tray. What is taken in or left aside stays in it, marked: nothing is ever deleted. */
import type { AppendResult } from '@pitlamp/contract'
import { entrySchema, readEntry, type Entry } from '@pitlamp/race'
import { held } from '../is-postgres.ts'
import type { TrayTable } from '../tables.ts'
import { appendFor, type AppendAnswer } from './append.ts'
import type { Trx } from './context.ts'

export interface DecideTrayInput {
  readonly team: string
  readonly meeting: string
  readonly device: string
  /** By id: those the captain has seen. */
  readonly entries: readonly string[]
  readonly nowMs: number
}

/**
 * Takes entries into the log as the device's own, in the order in which it made them, each with the role it
 * had. One that cannot be taken says why and stays undecided.
 */
export async function takeIn(trx: Trx, input: DecideTrayInput): Promise<AppendAnswer> {
  const rows = await waiting(trx, input)
  const read = rows.map(readRow)
  const good = read.flatMap((one) => ('entry' in one ? [one.entry] : []))
  const roles = new Map(rows.map(({ id, role }) => [id, role]))
  const append = { ...input, entries: [...good].sort((a, b) => a.n - b.n) }
  const { results, news } = await appendFor(trx, append, ({ id }) => roles.get(id) ?? 'viewer')
  const bad = read.flatMap((one) => ('result' in one ? [one.result] : []))
  await decide(trx, input, { what: 'takenIn', ids: results.flatMap(taken) })
  return { results: [...results, ...bad, ...missing(input, rows)], ...(news && { news }) }
}

/** Marks entries as left aside, but those the log has. @returns which they are */
export async function leaveAside(
  trx: Trx,
  input: DecideTrayInput,
): Promise<{ readonly left: readonly string[] }> {
  const rows = await waiting(trx, input)
  const left = rows.flatMap(({ id, decided }) => (decided === 'takenIn' ? [] : [id]))
  await decide(trx, input, { what: 'leftAside', ids: left })
  return { left }
}

async function waiting(trx: Trx, input: DecideTrayInput): Promise<readonly TrayTable[]> {
  const rows = await held(trx, trx.selectFrom('tray').selectAll())
    .where('team', '=', input.team)
    .where('device', '=', input.device)
    .where('meeting', '=', input.meeting)
    .where('id', 'in', [...input.entries])
    .orderBy('id')
    .execute()
  return rows.sort((a, b) => a.received_at - b.received_at)
}

async function decide(
  trx: Trx,
  input: DecideTrayInput,
  { what, ids }: { readonly what: TrayTable['decided']; readonly ids: readonly string[] },
): Promise<void> {
  if (ids.length === 0) return
  await trx
    .updateTable('tray')
    .set({ decided: what, decided_at: Math.round(input.nowMs) })
    .where('team', '=', input.team)
    .where('device', '=', input.device)
    .where('meeting', '=', input.meeting)
    .where('id', 'in', [...ids])
    .execute()
}

/** It was checked when it came; what this build no longer reads is said, not put into the log. */
function readRow(row: TrayTable): { readonly entry: Entry } | { readonly result: AppendResult } {
  const { id } = row
  const { data } = entrySchema.safeParse(JSON.parse(row.entry))
  if (!data) return { result: { outcome: 'refused', id, refusal: 'malformed' } }
  const read = readEntry(data)
  if (!('unread' in read) || read.unread !== 'malformed') return { entry: data }
  return { result: { outcome: 'refused', id, refusal: 'malformed', detail: read.why } }
}

function taken(result: AppendResult): readonly string[] {
  return result.outcome === 'refused' ? [] : [result.id]
}

function missing(input: DecideTrayInput, rows: readonly TrayTable[]): readonly AppendResult[] {
  const found = new Set(rows.map(({ id }) => id))
  return input.entries
    .filter((id) => !found.has(id))
    .map((id) => ({ outcome: 'refused', id, refusal: 'notFound' }))
}
