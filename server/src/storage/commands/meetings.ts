/** Meetings, and the team's people. */
import type { Meeting, NewMeeting, Person } from '@pitlamp/contract'
import { held } from '../is-postgres.ts'
import { meetingOf } from '../rows.ts'
import type { MeetingTable } from '../tables.ts'
import type { Refused } from './access.ts'
import type { Trx } from './context.ts'

export interface CreateMeetingInput {
  readonly team: string
  readonly meeting: NewMeeting
  readonly nowMs: number
}

/** Asked twice with one id it makes one meeting and answers with that. */
export async function createMeeting(
  trx: Trx,
  input: CreateMeetingInput,
): Promise<{ readonly meeting: Meeting } | Refused> {
  const { team, meeting } = input
  const before = await trx
    .selectFrom('meeting')
    .selectAll()
    .where('id', '=', meeting.id)
    .executeTakeFirst()
  if (before)
    return before.team === team ? { meeting: meetingOf(before) } : { refused: 'otherMeeting' }
  const now = Math.round(input.nowMs)
  const row: MeetingTable = {
    id: meeting.id,
    team,
    name: meeting.name,
    event: null,
    fictional: meeting.fictional ? 1 : 0,
    clock_anchor_server_ms: now,
    clock_anchor_meeting_ms: meeting.fictional?.startsAtMs ?? now,
    clock_rate: meeting.fictional?.rate ?? 1,
    created_at: now,
    last_seq: 0,
  }
  await trx.insertInto('meeting').values(row).execute()
  return { meeting: meetingOf(row) }
}

/** Whoever asks changes what belongs to the meeting: nobody else does so until the transaction ends. */
export async function ownsMeeting(trx: Trx, team: string, meeting: string): Promise<boolean> {
  const owner = await held(trx, trx.selectFrom('meeting').select('team'))
    .where('id', '=', meeting)
    .executeTakeFirst()
  return owner?.team === team
}

export async function savePerson(
  trx: Trx,
  input: { readonly team: string; readonly person: Person },
): Promise<{ readonly person: Person }> {
  const { id, name } = input.person
  await trx
    .insertInto('person')
    .values({ team: input.team, id, name })
    .onConflict((conflict) => conflict.columns(['team', 'id']).doUpdateSet({ name }))
    .execute()
  return { person: { id, name } }
}
