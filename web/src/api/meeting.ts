/** What a meeting's screens ask for. */
import { appendedSchema, entriesPageSchema, meetingSchema, meSchema } from '@pitlamp/contract'
import type { Entry } from '@pitlamp/race'
import { ask } from './ask.ts'

export const askMe = () => ask(meSchema, 'GET /api/me')

export const askMeeting = (id: string) => ask(meetingSchema, `GET /api/meetings/${id}`)

export const askEntriesAfter = (id: string, after: number) =>
  ask(entriesPageSchema, `GET /api/meetings/${id}/entries?after=${after}`)

/** The same as over the socket, for a device that has none any more. */
export const appendOverHttp = (meeting: string, entries: readonly Entry[]) =>
  ask(appendedSchema, `POST /api/meetings/${meeting}/entries`, { meeting, entries })
