/** Drafts of a meeting's documents, and the versions of them that are kept. */
import type { Draft, DraftVersion } from '@pitlamp/contract'
import type { DocumentName } from '@pitlamp/race'
import type { Kysely } from 'kysely'
import { draftOf } from '../rows.ts'
import type { Tables } from '../tables.ts'

const VERSIONS_LISTED = 200

export function draftReads(db: Kysely<Tables>) {
  return {
    async draft(meeting: string, document: DocumentName): Promise<Draft> {
      const row = await db
        .selectFrom('document')
        .selectAll()
        .where('meeting', '=', meeting)
        .where('document', '=', document)
        .executeTakeFirst()
      return draftOf(document, row)
    },

    /** Newest first. */
    async draftVersions(meeting: string, document: DocumentName): Promise<readonly DraftVersion[]> {
      const rows = await db
        .selectFrom('document_version')
        .leftJoin('device', (join) =>
          join
            .onRef('device.team', '=', 'document_version.team')
            .onRef('device.id', '=', 'document_version.saved_by'),
        )
        .select(['version', 'saved_at', 'device.name'])
        .where('meeting', '=', meeting)
        .where('document', '=', document)
        .orderBy('version', 'desc')
        .limit(VERSIONS_LISTED)
        .execute()
      return rows.map(({ version, saved_at, name }) => {
        return { version, savedAt: saved_at, savedBy: name ?? '' }
      })
    },

    /** Undefined where this version was not kept, or never was. */
    async draftVersion(
      meeting: string,
      { document, version }: { readonly document: DocumentName; readonly version: number },
    ): Promise<Draft | undefined> {
      const row = await db
        .selectFrom('document_version')
        .selectAll()
        .where('meeting', '=', meeting)
        .where('document', '=', document)
        .where('version', '=', version)
        .executeTakeFirst()
      return row && draftOf(document, row)
    },
  }
}
