/** Earlier versions of a meeting's documents. */
import { draftSchema, draftVersionsSchema } from '@pitlamp/contract'
import type { DocumentName } from '@pitlamp/race'
import { ask } from './ask.ts'

const path = (meeting: string, document: DocumentName) =>
  `/api/meetings/${meeting}/documents/${document}/versions` as const

export const askVersions = (meeting: string, document: DocumentName) =>
  ask(draftVersionsSchema, `GET ${path(meeting, document)}`)

export const askVersion = (meeting: string, document: DocumentName, version: number) =>
  ask(draftSchema, `GET ${path(meeting, document)}/${version}`)
