/** What one kind of entry does to the state, and how it lists what does not add up. */
import type { Kind } from '../../entry/kinds/index.ts'
import type { EntryOf } from '../../entry/read.ts'
import type { Draft } from '../draft.ts'
import type { Problem, Said } from '../state.ts'

/** `at` is when the entry counts, which a correction may have set; the entry's own `at` is not to be used. */
export type Handler<K extends Kind> = (draft: Draft, entry: EntryOf<K>, at: number) => void

/** One handler a kind: a kind without one does not compile. */
export type Handlers<K extends Kind> = { readonly [P in K]: Handler<P> }

export function said<K extends Kind>(entry: EntryOf<K>, at: number): Said<K> {
  return { entry: entry.id, at, body: entry.body }
}

/** `entries`: this one last, before it those it does not agree with. */
export function outOfPlace(draft: Draft, entries: readonly string[], sentence: string): void {
  list(draft, { kind: 'outOfPlace', entries, sentence })
}

export function alreadySo(draft: Draft, entries: readonly string[], sentence: string): void {
  list(draft, { kind: 'alreadySo', entries, sentence })
}

function list(draft: Draft, problem: Problem): void {
  draft.problems.push(problem)
}
