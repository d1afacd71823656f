/** Which version of a document holds at an instant. */
import type { DocumentContent } from '../documents/index.ts'
import type { DocumentName } from '../entry/kinds/record.ts'
import type { Adoption, DocumentsState } from './state.ts'

export interface WithDocuments {
  readonly documents: DocumentsState
}

/**
 * The last version in log order that applies at `at` (meeting time). Before the first one applies it is
 * read all the same, since no other ever held. Undefined where the document was never adopted.
 */
export function inForce<D extends DocumentName>(
  state: WithDocuments,
  document: D,
  at: number,
): DocumentContent<D> | undefined {
  return adoptionInForce(state, document, at)?.content
}

/** The same, with the entry that adopted it. */
export function adoptionInForce<D extends DocumentName>(
  state: WithDocuments,
  document: D,
  at: number,
): Adoption<D> | undefined {
  const adoptions: readonly Adoption<D>[] = state.documents[document]
  for (let i = adoptions.length - 1; i >= 0; i -= 1) {
    const adoption = adoptions[i]
    if (adoption && adoption.appliesFrom <= at) return adoption
  }
  return adoptions[0]
}
