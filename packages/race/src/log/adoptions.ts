/** Documents are known before anything is judged: a version adopted as a correction holds from the start. */
import type { EntryOf } from '../entry/read.ts'
import { DOCUMENTS, type DocumentName } from '../entry/kinds/record.ts'
import type { Adoption, DocumentsState } from '../fold/state.ts'
import { holds, type Line } from './line.ts'
import type { Problems } from './problems.ts'

const CALLED: Readonly<Record<DocumentName, string>> = {
  rules: 'the rules',
  crew: 'the crew',
  car: 'the car',
  plan: 'the plan',
  evidence: 'the evidence',
}

export function adopt(lines: readonly Line[], problems: Problems): DocumentsState {
  const documents = Object.fromEntries(DOCUMENTS.map((name) => [name, [] as Adoption[]]))
  const last: { [D in DocumentName]?: EntryOf<'adopted.1'> } = {}
  for (const line of lines) {
    const entry = line.corrected ?? line.entry
    if (entry.kind !== 'adopted.1' || !holds(line)) continue
    const adopted = entry as EntryOf<'adopted.1'>
    const { document, version, content, as, appliesFrom } = adopted.body
    listClash(last[document], adopted, problems)
    last[document] = adopted
    documents[document]?.push({
      entry: entry.id,
      version,
      appliesFrom: as === 'correction' ? 0 : appliesFrom,
      content: content as Adoption['content'],
    })
  }
  return documents as unknown as DocumentsState
}

/** A later adoption that does not count on from the one before was made without knowing it. */
function listClash(
  before: EntryOf<'adopted.1'> | undefined,
  adopted: EntryOf<'adopted.1'>,
  problems: Problems,
): void {
  if (!before || adopted.body.version > before.body.version) return
  if (adopted.body.sha256 === before.body.sha256) return
  const what = CALLED[adopted.body.document]
  problems.push({
    kind: 'adoptionClash',
    entries: [before.id, adopted.id],
    sentence: `Two versions of ${what} were adopted unaware of each other. The later one holds.`,
  })
}
