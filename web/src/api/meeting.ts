/** What a meeting's screens ask for. */
import { entriesPageSchema, meetingSchema, meSchema } from '@pitlamp/contract'
import { ask } from './ask.ts'

export const askMe = () => ask(meSchema, 'GET /api/me')

export const askMeeting = (id: string) => ask(meetingSchema, `GET /api/meetings/${id}`)

export const askEntriesAfter = (id: string, after: number) =>
  ask(entriesPageSchema, `GET /api/meetings/${id}/entries?after=${after}`)
