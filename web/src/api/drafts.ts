/** Drafts of a meeting's documents. */
import { draftSchema, staleDraftSchema, type Draft, type SaveDraft } from '@pitlamp/contract'
import type { DocumentName } from '@pitlamp/race'
import { ask, type Failure } from './ask.ts'

const path = (meeting: string, document: DocumentName) =>
  `/api/meetings/${meeting}/documents/${document}` as const

export const askDraft = (meeting: string, document: DocumentName) =>
  ask(draftSchema, `GET ${path(meeting, document)}`)

export const saveDraft = (meeting: string, document: DocumentName, body: SaveDraft) =>
  ask(draftSchema, `PUT ${path(meeting, document)}`, body)

/** What somebody else saved meanwhile, where that is why ours was not. */
export function savedMeanwhile({ answer }: Failure): Draft | undefined {
  return staleDraftSchema.safeParse(answer).data?.current
}
