/**
 * What was laid down for a meeting, as this device last had it from the server: for a copy of the meeting, should the
 * server die. Planning itself never reads it. Forgetting costs little: what was adopted is in the log.
 */
import { draftSchema, personSchema, type Draft, type Person } from '@pitlamp/contract'
import { ofMeeting, openStore, type Store } from './store.ts'

export interface LaidDown {
  readonly drafts: Draft[]
  readonly people: Person[]
}

export function keepDraft(meeting: string, draft: Draft): void {
  if (draft.version > 0) keep((store) => store.put('drafts', draft, [meeting, draft.document]))
}

export function keepPeople(people: readonly Person[]): void {
  keep((store) => store.put('known', people, 'people'))
}

export async function readLaidDown(store: Store, meeting: string): Promise<LaidDown> {
  const [drafts, people] = await Promise.all([
    store.getAll('drafts', ofMeeting(meeting)),
    store.get('known', 'people'),
  ])
  return {
    drafts: drafts.flatMap((stored) => draftSchema.safeParse(stored).data ?? []),
    people: (Array.isArray(people) ? people : []).flatMap(
      (stored) => personSchema.safeParse(stored).data ?? [],
    ),
  }
}

function keep(put: (store: Store) => Promise<unknown>): void {
  void openStore()
    .then((store) => put(store).finally(() => store.close()))
    .catch(() => undefined)
}
