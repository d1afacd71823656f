/** Drafts of a meeting's documents: the newest, and the versions before it that are kept. */
import type { Draft, SaveDraft } from '@pitlamp/contract'
import type { DocumentName } from '@pitlamp/race'
import { draftOf } from '../rows.ts'
import type { DocumentTable } from '../tables.ts'
import type { Refused } from './access.ts'
import type { Done, Trx } from './context.ts'
import { ownsMeeting } from './meetings.ts'

/** Screens save as somebody draws. Common practice, no source. */
const PAUSE_MS = 60_000
const KEPT_AT_LEAST_EVERY_MS = 600_000

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
  if (!(await ownsMeeting(trx, team, meeting))) return { refused: 'otherMeeting' }
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
  await put(trx, row)
  await keepVersion(trx, row)
  return { draft: draftOf(document, row) }
}

export interface BringDraftInput {
  readonly team: string
  readonly meeting: string
  readonly device: string
  readonly draft: Draft
  readonly nowMs: number
}

/**
 * A draft out of a copy, with the version it has there. One that is here and not behind it stands; one that is behind
 * stays among the versions, however lately it was saved.
 */
export async function bringDraft(trx: Trx, input: BringDraftInput): Promise<Done> {
  const { team, meeting, draft } = input
  const { document, version } = draft
  const before = await trx
    .selectFrom('document')
    .select('version')
    .where('meeting', '=', meeting)
    .where('document', '=', document)
    .executeTakeFirst()
  if (version <= (before?.version ?? 0)) return 'done'
  const row = {
    ...{ team, meeting, document, version },
    content: JSON.stringify(draft.content),
    saved_at: draft.savedAt ?? Math.round(input.nowMs),
    saved_by: input.device,
  }
  await put(trx, row)
  await addVersion(trx, row)
  return 'done'
}

async function put(trx: Trx, row: DocumentTable): Promise<void> {
  const { version, content, saved_at, saved_by } = row
  const changed = { version, content, saved_at, saved_by }
  await trx
    .insertInto('document')
    .values(row)
    .onConflict((conflict) => conflict.columns(['meeting', 'document']).doUpdateSet(changed))
    .execute()
}

async function addVersion(trx: Trx, row: DocumentTable): Promise<void> {
  await trx
    .insertInto('document_version')
    .values({ ...row, begun_at: row.saved_at })
    .execute()
}

/**
 * The newest version is always kept. It stays when the next one comes from another device, or a minute or
 * more later, or when it would stand for more than ten minutes of saving without a pause; otherwise the next
 * one takes its place. What was adopted meanwhile is in the log whole, whatever is kept here.
 */
async function keepVersion(trx: Trx, row: DocumentTable): Promise<void> {
  const last = await trx
    .selectFrom('document_version')
    .select(['version', 'begun_at', 'saved_at', 'saved_by'])
    .where('meeting', '=', row.meeting)
    .where('document', '=', row.document)
    .orderBy('version', 'desc')
    .limit(1)
    .executeTakeFirst()
  const goesOn =
    last?.saved_by === row.saved_by &&
    isWithin(row.saved_at - last.saved_at, PAUSE_MS) &&
    isWithin(row.saved_at - last.begun_at, KEPT_AT_LEAST_EVERY_MS)
  if (!goesOn) return addVersion(trx, row)
  await trx
    .updateTable('document_version')
    .set({ version: row.version, content: row.content, saved_at: row.saved_at })
    .where('meeting', '=', row.meeting)
    .where('document', '=', row.document)
    .where('version', '=', last.version)
    .execute()
}

/** Not before 0 either: after the captain has set the clock back, nothing is replaced. */
function isWithin(sinceMs: number, limitMs: number): boolean {
  return sinceMs >= 0 && sinceMs < limitMs
}
