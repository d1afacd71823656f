/** What the log knows that can break a tie. */
import type { State } from '../fold/state.ts'
import type { Unit } from './points.ts'
import type { Total } from './result.ts'
import { entrantOf, withOurs, type SegmentResult } from './segment-results.ts'
import { compareDistances } from './sums.ts'
import type { Evidence } from './ties.ts'

export interface Known {
  readonly totals: ReadonlyMap<string, Total>
  /** What is placed on its own, for a count-back. */
  readonly units: readonly Unit[]
  readonly segments: readonly SegmentResult[]
}

/**
 * The best segment, and the count-back (most first places, then most second places, and so on) are counted. A
 * run-off, a best lap and the order of scrutineering only race control knows: the last classification of the whole,
 * entered after all segments, tells where it sets those who are equal apart.
 */
export function evidenceOf(
  state: State,
  now: number,
  { totals, units, segments }: Known,
): Evidence {
  const counts = placeCounts(units)
  const since = Math.max(...segments.map(({ at }) => at))
  const said = wholePlaces(state, since, now)
  return {
    compare: (by, entrants) => {
      if (by === 'bestSegment') {
        return (a, b) => compareDistances(bestOf(totals, b), bestOf(totals, a))
      }
      if (by === 'countBack') return (a, b) => countBack(counts.get(a), counts.get(b))
      const places = new Set(entrants.map((one) => said.get(one)))
      if (places.has(undefined) || places.size < entrants.length) return undefined
      return (a, b) => (said.get(a) ?? 0) - (said.get(b) ?? 0)
    },
  }
}

const NONE = { laps: 0 }

function bestOf(totals: Known['totals'], entrant: string) {
  return totals.get(entrant)?.best ?? NONE
}

function placeCounts(units: readonly Unit[]): ReadonlyMap<string, ReadonlyMap<number, number>> {
  const counts = new Map<string, Map<number, number>>()
  for (const line of units.flatMap(({ lines }) => lines)) {
    const key = entrantOf({ ...line, laps: 0 })
    const places = counts.get(key) ?? new Map<number, number>()
    counts.set(key, places.set(line.place, (places.get(line.place) ?? 0) + 1))
  }
  return counts
}

type Places = ReadonlyMap<number, number> | undefined

function countBack(a: Places, b: Places): number {
  const places = [...new Set([...(a?.keys() ?? []), ...(b?.keys() ?? [])])]
  for (const place of places.sort((one, other) => one - other)) {
    const more = (b?.get(place) ?? 0) - (a?.get(place) ?? 0)
    if (more !== 0) return more
  }
  return 0
}

function wholePlaces(state: State, since: number, now: number): ReadonlyMap<string, number> {
  const last = state.raceControl.classifications
    .filter(({ at, body }) => at >= since && at <= now && body.scope === 'whole')
    .at(-1)
  const lines = withOurs(state, last?.body.lines ?? [])
  return new Map(lines.map((line) => [entrantOf(line), line.place]))
}
