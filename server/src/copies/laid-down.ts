/**
 * What was laid down for the meeting besides its log. Planning screens go by drafts and count their versions on, so
 * that a document which was adopted needs a draft that is not behind it.
 */
import type { Draft, MeetingCopy, Person } from '@pitlamp/contract'
import { documentSchemas, DOCUMENTS, fold, mayRecord, readEntry, type State } from '@pitlamp/race'

export interface LaidDown {
  readonly drafts: readonly Draft[]
  readonly people: readonly Person[]
}

/** Of each document the draft in the copy, or what was adopted last where that is newer. */
export function laidDown(copy: MeetingCopy): LaidDown {
  const { documents } = stateOf(copy)
  const drafts = DOCUMENTS.flatMap((document): Draft[] => {
    const drafted = copy.drafts.find((draft) => draft.document === document)
    const adopted = documents[document].at(-1)
    if (adopted && adopted.version > (drafted?.version ?? 0)) {
      return [{ document, version: adopted.version, content: adopted.content }]
    }
    return drafted && drafted.version > 0 ? [drafted] : []
  })
  return { drafts, people: [...copy.people, ...crewsIn(drafts)] }
}

/** What its device may not record will not be in the log. */
function stateOf({ recorded, unsent }: MeetingCopy): State {
  const taken = unsent.filter(({ entry, role }) => !role || mayRecord(role, entry, () => false))
  return fold([...recorded, ...taken.map(({ entry }) => entry)].map(readEntry))
}

function crewsIn(drafts: readonly Draft[]): readonly Person[] {
  const crew = drafts.find(({ document }) => document === 'crew')?.content
  const { data } = documentSchemas.crew.safeParse(crew)
  return (data?.people ?? []).map(({ id, name }) => ({ id, name }))
}
