/** Of what several copies say of the same thing, what counts. */
import type { Draft, Person } from '@pitlamp/contract'

type Ranks = readonly (number | string)[]

/** Smallest rank first; ranks are compared part by part, text by code units. Leaves the list as it is. */
export function firstBy<T>(list: readonly T[], rankOf: (one: T) => Ranks): readonly T[] {
  return list
    .map((one) => ({ one, ranks: rankOf(one) }))
    .sort((a, b) => compare(a.ranks, b.ranks))
    .map(({ one }) => one)
}

/** Lists of the latest copy first: a name given later takes the place of an earlier one. By id. */
export function newestNames(lists: readonly (readonly Person[])[]): Person[] {
  const found = new Map<string, Person>()
  for (const person of lists.flat()) if (!found.has(person.id)) found.set(person.id, person)
  return [...firstBy([...found.values()], ({ id }) => [id])]
}

/** Of each document the highest version, of two with one number the one that was saved last. */
export function newestDrafts(drafts: readonly Draft[]): Draft[] {
  const found = new Map<string, Draft>()
  for (const draft of firstBy(drafts, rankOfDraft)) {
    if (!found.has(draft.document)) found.set(draft.document, draft)
  }
  return [...found.values()]
}

function rankOfDraft({ document, version, savedAt = 0, content }: Draft): Ranks {
  return [document, -version, -savedAt, JSON.stringify([content])]
}

function compare(a: Ranks, b: Ranks): number {
  for (const [place, ours] of a.entries()) {
    const theirs = b[place]
    if (theirs === undefined || ours === theirs) continue
    return ours < theirs ? -1 : 1
  }
  return 0
}
