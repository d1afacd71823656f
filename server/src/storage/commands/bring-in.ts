/**
 * A meeting out of a copy. It keeps its id, its clock and the ids of its entries, and on a new server their numbers and
 * times too: whoever comes back with the same entries finds them. Where the meeting is here already, entries are added
 * and nothing is changed: a copy brought in twice is brought in once.
 */
import {
  serverTime,
  type BroughtIn,
  type Draft,
  type MeetingCopy,
  type Person,
  type Unsent,
} from '@pitlamp/contract'
import { mayRecord, ROLES, type RecordedEntry, type Role } from '@pitlamp/race'
import { isSame } from '@pitlamp/sync'
import { alone, held } from '../is-postgres.ts'
import { clockOf, meetingOf } from '../rows.ts'
import type { MeetingTable } from '../tables.ts'
import type { Refused } from './access.ts'
import { appendFor, type AppendAnswer } from './append.ts'
import { raiseLastSeq } from './append-rows.ts'
import type { Trx } from './context.ts'
import { bringDraft } from './drafts.ts'
import { findEntries, insertEntries } from './entry-rows.ts'

export interface BringInInput {
  readonly team: string
  /** The captain's, who answers for the copy. */
  readonly device: string
  readonly meeting: string
  /** Its entries checked: see `copies/checked.ts`. */
  readonly copy: Pick<MeetingCopy, 'asOf' | 'meeting' | 'recorded' | 'unsent'>
  readonly drafts: readonly Draft[]
  readonly people: readonly Person[]
  readonly nowMs: number
}

export type BroughtInAnswer = Pick<AppendAnswer, 'news'> & {
  readonly broughtIn: Omit<BroughtIn, 'behindMs'>
}

export async function bringIn(trx: Trx, input: BringInInput): Promise<BroughtInAnswer | Refused> {
  await alone(trx)
  const row = await openOrMake(trx, input)
  if (row.team !== input.team) return { refused: 'otherMeeting' }
  const { fresh, left } = await putRecorded(trx, row, input.copy.recorded)
  const { results, news } = await appendUnsent(trx, row, input)
  for (const draft of input.drafts) await bringDraft(trx, { ...input, draft })
  for (const person of input.people) await addPerson(trx, input.team, person)
  const to = row.last_seq + fresh.length + (news?.entries.length ?? 0)
  const unsent = results.filter(({ outcome }) => outcome === 'recorded').length
  const twice = results.filter(({ outcome }) => outcome === 'duplicate').length
  const refused = results.flatMap((one) =>
    one.outcome === 'refused' && one.id !== null ? [{ entry: one.id, refusal: one.refusal }] : [],
  )
  const entries = [...fresh, ...(news?.entries ?? [])]
  return {
    broughtIn: {
      meeting: meetingOf({ ...row, last_seq: to }),
      ...{ recorded: fresh.length, unsent, left: [...left, ...refused] },
      already: input.copy.recorded.length - fresh.length - left.length + twice,
    },
    ...(entries.length > 0 && { news: { from: row.last_seq, to, entries } }),
  }
}

async function openOrMake(trx: Trx, { team, copy }: BringInInput): Promise<MeetingTable> {
  const { id, name, fictional, clock, createdAt } = copy.meeting
  const row: MeetingTable = {
    ...{ id, team, name, event: null, fictional: fictional ? 1 : 0 },
    clock_anchor_server_ms: clock.anchorServerMs,
    clock_anchor_meeting_ms: clock.anchorMeetingMs,
    clock_rate: clock.rate,
    ...{ created_at: createdAt, last_seq: 0 },
  }
  const found = await held(trx, trx.selectFrom('meeting').selectAll())
    .where('id', '=', id)
    .executeTakeFirst()
  if (found) return found
  await trx.insertInto('meeting').values(row).execute()
  return row
}

type Left = BroughtIn['left']

/** What is not here yet follows on, in the order of the copy: on a new server with the numbers it had. */
async function putRecorded(
  trx: Trx,
  row: MeetingTable,
  recorded: readonly RecordedEntry[],
): Promise<{ readonly fresh: readonly RecordedEntry[]; readonly left: Left }> {
  const ids = recorded.map(({ id }) => id)
  const known = await findEntries(trx, row.id, ids)
  const fresh: RecordedEntry[] = []
  const left: Left = []
  for (const entry of recorded) {
    const here = known.get(entry.id)
    if (!here) {
      const numbered = { ...entry, seq: row.last_seq + fresh.length + 1 }
      known.set(entry.id, numbered)
      fresh.push(numbered)
    } else if (!isSame(entry, here)) left.push({ entry: entry.id, refusal: 'otherBody' })
  }
  await insertEntries(trx, row, fresh)
  if (fresh.length > 0) await raiseLastSeq(trx, row.id, row.last_seq + fresh.length)
  return { fresh, left }
}

/** As if each device had sent its own just now, but never before the moment at which the copy was written. */
async function appendUnsent(
  trx: Trx,
  row: MeetingTable,
  input: BringInInput,
): Promise<AppendAnswer> {
  const { copy, nowMs } = input
  const byId = new Map(copy.unsent.map((unsent) => [unsent.entry.id, unsent]))
  const entries = copy.unsent.map(({ entry }) => entry)
  if (entries.length === 0) return { results: [] }
  const writtenMs = serverTime(clockOf(row), copy.asOf)
  return appendFor(trx, { ...input, entries, nowMs: Math.max(nowMs, writtenMs) }, ({ id }) =>
    roleFor(byId.get(id)),
  )
}

/** Where nobody knows the role of its device any more, the least one that may record it. */
function roleFor(unsent: Unsent | undefined): Role {
  if (!unsent) return 'viewer'
  const { role, entry } = unsent
  return role ?? ROLES.find((one) => mayRecord(one, entry, () => false)) ?? 'viewer'
}

/** Who is known here already is called as here. */
async function addPerson(trx: Trx, team: string, { id, name }: Person): Promise<void> {
  await trx
    .insertInto('person')
    .values({ team, id, name })
    .onConflict((conflict) => conflict.columns(['team', 'id']).doNothing())
    .execute()
}
