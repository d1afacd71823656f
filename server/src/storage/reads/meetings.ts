/** Meetings, who sees their plan, and the team's people. */
import type { Meeting, Person } from '@pitlamp/contract'
import type { Kysely } from 'kysely'
import { meetingOf } from '../rows.ts'
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

    /** Whose plan a code opens; undefined for none that was given out, or one that was revoked. */
    async planBehind(codeHash: string): Promise<{ team: string; meeting: string } | undefined> {
      return db
        .selectFrom('plan_link')
        .select(['team', 'meeting'])
        .where('code_hash', '=', codeHash)
        .where('revoked_at', 'is', null)
        .executeTakeFirst()
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
