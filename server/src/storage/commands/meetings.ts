/** Meetings, their drafts, and the team's people. */
import type { Draft, Meeting, NewMeeting, Person, SaveDraft } from '@pitlamp/contract'
import type { DocumentName } from '@pitlamp/race'
import { draftOf, meetingOf } from '../rows.ts'
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

export interface SaveDraftInput {
  readonly team: string
  readonly meeting: string
  readonly document: DocumentName
  readonly device: string
  readonly save: SaveDraft
  readonly nowMs: number
}

/** A save made from another version than the last one changes nothing and is answered with that last one. */
export async function saveDraft(
  trx: Trx,
  input: SaveDraftInput,
): Promise<{ readonly draft: Draft } | { readonly stale: Draft } | Refused> {
  const { team, meeting, document, save } = input
  const owner = await trx
    .selectFrom('meeting')
    .select('team')
    .where('id', '=', meeting)
    .executeTakeFirst()
  if (owner?.team !== team) return { refused: 'otherMeeting' }
  const before = await trx
    .selectFrom('document')
    .selectAll()
    .where('meeting', '=', meeting)
    .where('document', '=', document)
    .executeTakeFirst()
  if ((before?.version ?? 0) !== save.basedOn) return { stale: draftOf(document, before) }
  const changed = {
    version: save.basedOn + 1,
    content: JSON.stringify(save.content),
    saved_at: Math.round(input.nowMs),
    saved_by: input.device,
  }
  const row = { team, meeting, document, ...changed }
  await trx
    .insertInto('document')
    .values(row)
    .onConflict((conflict) => conflict.columns(['meeting', 'document']).doUpdateSet(changed))
    .execute()
  return { draft: draftOf(document, row) }
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
