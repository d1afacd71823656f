/** Meetings, their drafts, and the team's people. */
import type { Draft, Meeting, Person } from '@pitlamp/contract'
import type { DocumentName } from '@pitlamp/race'
import type { Kysely } from 'kysely'
import { draftOf, meetingOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

export function meetingReads(db: Kysely<Tables>) {
  return {
    /** Newest first. */
    async meetings(team: string): Promise<readonly Meeting[]> {
      const rows = await db
        .selectFrom('meeting')
        .selectAll()
        .where('team', '=', team)
        .orderBy('created_at', 'desc')
        .orderBy('id', 'desc')
        .execute()
      return rows.map(meetingOf)
    },

    async meeting(team: string, id: string): Promise<Meeting | undefined> {
      const row = await db
        .selectFrom('meeting')
        .selectAll()
        .where('team', '=', team)
        .where('id', '=', id)
        .executeTakeFirst()
      return row && meetingOf(row)
    },

    async draft(meeting: string, document: DocumentName): Promise<Draft> {
      const row = await db
        .selectFrom('document')
        .selectAll()
        .where('meeting', '=', meeting)
        .where('document', '=', document)
        .executeTakeFirst()
      return draftOf(document, row)
    },

    async people(team: string): Promise<readonly Person[]> {
      return db
        .selectFrom('person')
        .select(['id', 'name'])
        .where('team', '=', team)
        .orderBy('name')
        .orderBy('id')
        .execute()
    },
  }
}
