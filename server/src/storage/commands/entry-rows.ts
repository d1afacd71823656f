/** Rows of the log: found by id, put in many at once. */
import type { RecordedEntry } from '@pitlamp/race'
import { entryOf } from '../rows.ts'
import type { EntryTable, MeetingTable } from '../tables.ts'
import type { Trx } from './context.ts'
import { bySize, padded, parts, withParameters } from './compiled.ts'

/** What has to be known of an entry to tell a repetition from another entry under its id. */
export type KnownEntry = RecordedEntry

const COLUMNS = [
  'team',
  'meeting',
  'seq',
  'id',
  'v',
  'device',
  'n',
  'person',
  'at',
  'at_bound_ms',
  'epoch',
  'kind',
  'body',
  'recorded_at',
  'role',
] as const satisfies readonly (keyof EntryTable)[]

/** Few enough that 15 columns stay below any database's limit of parameters. */
const ROWS_A_STATEMENT = 64
const IDS_A_STATEMENT = 256

const insertOf = bySize((trx: Trx, size: number) => {
  const row = Object.fromEntries(COLUMNS.map((column) => [column, ''])) as unknown as EntryTable
  return trx
    .insertInto('entry')
    .values(Array<EntryTable>(size).fill(row))
    .onConflict((conflict) => conflict.columns(['meeting', 'id']).doNothing())
    .compile()
})

/** @returns how many went in; the others' ids were there already */
export async function insertEntries(
  trx: Trx,
  meeting: MeetingTable,
  entries: readonly RecordedEntry[],
): Promise<number> {
  let inserted = 0
  for (const part of parts(entries, ROWS_A_STATEMENT)) {
    const values = part.flatMap((entry) => valuesOf(meeting, entry))
    const done = await trx.executeQuery(withParameters(insertOf(trx, part.length), values))
    inserted += Number(done.numAffectedRows ?? 0)
  }
  return inserted
}

/** Undoes what this transaction put into the meeting. */
export async function takeOut(trx: Trx, { id, last_seq }: MeetingTable): Promise<void> {
  await trx.deleteFrom('entry').where('meeting', '=', id).where('seq', '>', last_seq).execute()
}

/** In the order of COLUMNS. */
function valuesOf(meeting: MeetingTable, entry: RecordedEntry): readonly unknown[] {
  return [
    meeting.team,
    meeting.id,
    entry.seq,
    entry.id,
    entry.v,
    entry.device,
    entry.n,
    entry.person ?? null,
    entry.at,
    entry.atBoundMs,
    entry.epoch,
    entry.kind,
    entry.body,
    entry.recordedAt,
    entry.role,
  ]
}

const findOf = bySize((trx: Trx, size: number) =>
  trx
    .selectFrom('entry')
    .selectAll()
    .where('meeting', '=', '')
    .where('id', 'in', Array<string>(size).fill(''))
    .compile(),
)

export async function findEntries(
  trx: Trx,
  meeting: string,
  ids: readonly string[],
): Promise<Map<string, KnownEntry>> {
  const found = new Map<string, KnownEntry>()
  for (const part of parts(ids, IDS_A_STATEMENT)) {
    const list = padded(part)
    const query = withParameters(findOf(trx, list.length), [meeting, ...list])
    const { rows } = await trx.executeQuery(query)
    for (const row of rows as EntryTable[]) found.set(row.id, entryOf(row))
  }
  return found
}
