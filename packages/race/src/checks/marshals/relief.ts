import { known } from '../../rules/shape.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import { cameToAt, postName, staysOf, type Stay } from './watches.ts'

/**
 * Whoever leaves a post before the segment ends is relieved there: the value is how long both are at it, below 0
 * where nobody is in between. Each relief takes over from one; posts without a name are taken for each other.
 */
export const relief: Check<'relief'> = {
  axis: 'meeting',
  limits: ({ before, byMs }, bench) => {
    if (known(before) !== true) return []
    const limit = known(byMs) ?? 0
    const cases = [...postsOf(bench).values()].flatMap((stays) => casesOf(stays, limit, bench))
    return [{ name: 'before', called: 'The relief is there before, by', cases }]
  },
}

/** Stays by segment and post. */
function postsOf(bench: Bench): ReadonlyMap<string, readonly Stay[]> {
  const posts = new Map<string, Stay[]>()
  for (const stay of staysOf(bench)) {
    const where = `${stay.segment} ${stay.post ?? ''}`
    const stays = posts.get(where)
    if (stays) stays.push(stay)
    else posts.set(where, [stay])
  }
  return posts
}

function casesOf(stays: readonly Stay[], limit: number, bench: Bench): readonly Case[] {
  const segment = bench.timeline.segments.find(({ id }) => id === stays[0]?.segment)
  if (!segment) return []
  const endAt = cameToAt(bench, segment)
  const came = new Set<Stay>()
  return [...stays]
    .sort((a, b) => a.toAt - b.toAt || a.fromAt - b.fromAt)
    .filter(({ toAt }) => toAt < endAt)
    .map((stay) => {
      const next = stays.find(
        (one) => one.fromAt > stay.fromAt && one.toAt > stay.toAt && !came.has(one),
      )
      if (next) came.add(next)
      return caseOf({ stay, next, value: stay.toAt - (next?.fromAt ?? endAt), limit }, bench)
    })
}

interface Relieved {
  readonly stay: Stay
  readonly next: Stay | undefined
  readonly value: number
  readonly limit: number
}

function caseOf({ stay, next, value, limit }: Relieved, bench: Bench): Case {
  const { person, segment, toMs, toAt } = stay
  const who = bench.nameOf(person)
  return {
    sense: 'atLeast',
    unit: 'ms',
    limit,
    value,
    at: toAt,
    people: next ? [person, next.person] : [person],
    spans: [...stay.spans.slice(-1), ...(next?.spans.slice(0, 1) ?? [])],
    says: () => {
      const leaves = `${who} leaves ${postName(stay)} at ${placeInWords(bench, { segment, clockMs: toMs })}`
      if (!next) return `${leaves}, and nobody comes after.`
      const comes = `${bench.nameOf(next.person)} comes ${durationInWords(value)} ${value < 0 ? 'later' : 'earlier'}`
      return limit === 0
        ? `${leaves}, ${comes}.`
        : `${leaves}, ${comes}, at least ${durationInWords(limit)} earlier.`
    },
  }
}
