/** A meeting as it would be if drafts were adopted: planning screens ask it what the race screens ask the log. */
import type { DocumentContent } from '../documents/index.ts'
import { DOCUMENTS, type DocumentName } from '../entry/kinds/record.ts'
import type { Adoption, DocumentsState, State } from '../fold/state.ts'

export type Drafts = { readonly [D in DocumentName]?: DocumentContent<D> }

/** `state` with these documents as if they had always been meant; every other one as it is. */
export function withDrafts(state: State, drafts: Drafts): State {
  const documents: Record<string, readonly Adoption[]> = { ...state.documents }
  for (const document of DOCUMENTS) {
    const content = drafts[document]
    if (content) documents[document] = [{ entry: 'draft', version: 0, appliesFrom: 0, content }]
  }
  const drafted = { ...state, documents: documents as unknown as DocumentsState }
  // What was moved in the plan so far is not moved in another one.
  return drafts.plan ? { ...drafted, people: { ...state.people, stayOuts: [] } } : drafted
}
