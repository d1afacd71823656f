/** What belongs to the installation and to no team: the server's clock, the operator's tickets. */
import type { Kysely } from 'kysely'
import type { KeptTime } from '../commands/server-time.ts'
import type { Tables } from '../tables.ts'

export function installationReads(db: Kysely<Tables>) {
  return {
    async keptTime(): Promise<KeptTime | undefined> {
      const row = await db.selectFrom('server_time').selectAll().executeTakeFirst()
      if (!row) return undefined
      const { mark_ms: markMs, shift_ms: shiftMs, epoch, ahead_ms: aheadMs } = row
      return { markMs, shiftMs, epoch, ...(aheadMs !== null && { aheadMs }) }
    },

    async ticket(codeHash: string): Promise<string | undefined> {
      const row = await db
        .selectFrom('ticket')
        .select('ticket')
        .where('code_hash', '=', codeHash)
        .executeTakeFirst()
      return row?.ticket
    },
  }
}
