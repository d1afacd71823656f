/** Everything that is read, over a connection that cannot write. Pages are at most PAGE_ENTRIES long. */
import type { Kysely } from 'kysely'
import type { Tables } from '../tables.ts'
import { accessReads } from './access.ts'
import { draftReads } from './drafts.ts'
import { logReads } from './log.ts'
import { meetingReads } from './meetings.ts'
import { installationReads } from './installation.ts'
import { sharedReads } from './shared.ts'
import { wallReads } from './wall.ts'

export function readsOver(db: Kysely<Tables>) {
  return {
    ...accessReads(db),
    ...meetingReads(db),
    ...draftReads(db),
    ...logReads(db),
    ...wallReads(db),
    ...sharedReads(db),
    ...installationReads(db),
  }
}
export type Reads = ReturnType<typeof readsOver>
