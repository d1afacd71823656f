import type { Bench } from '../bench.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { namesInWords, placeInWords } from '../places.ts'
import { handoversOf, movesOf, movesOn, waitsOf, type Wait } from './handovers.ts'

/**
 * A handover is an ordered list of moves: somebody arrives in the new duty as they leave the old one. Who must be
 * somewhere before another leaves it moves before them; where that goes round in a ring, nobody can begin. What was
 * raced was done in some order.
 */
export const orderOfMoves: AlwaysCheck = {
  called: 'The handover can be done in order',
  axis: 'none',
  limits: (bench) => {
    const moves = movesOf(bench)
    const cases = handoversOf(bench).flatMap((handover): Case[] => {
      if (!movesOn(handover)) return []
      const ring = ringOf(inCrewOrder(bench, waitsOf(bench, handover, moves)))
      const { at, segment, clockMs, leaving, arriving } = handover
      if (ring.length === 0 || [...leaving, ...arriving].every(({ done }) => done)) return []
      const people = new Set(ring)
      return [
        {
          sense: 'atMost',
          unit: 'count',
          limit: 0,
          value: ring.length,
          at,
          people: ring,
          spans: [...leaving, ...arriving]
            .filter(({ person }) => people.has(person))
            .map(({ id }) => id),
          says: () =>
            `${namesInWords(ring.map(bench.nameOf))} cannot hand over at ${placeInWords(bench, { segment, clockMs })}: each would have to move before the next.`,
        },
      ]
    })
    return [{ name: 'ring', called: 'Moves that wait for each other', cases }]
  },
}

/** So that the same ring is said in the same words, in whatever order the spans lie. */
function inCrewOrder({ people }: Bench, waits: readonly Wait[]): readonly Wait[] {
  const placeOf = new Map(people.map(({ id }, place) => [id, place]))
  const place = (person: string) => placeOf.get(person) ?? people.length
  return [...waits].sort((a, b) => place(a.first) - place(b.first) || place(a.then) - place(b.then))
}

/** People of one ring, each moving before the next and the last before the first; empty where there is none. */
function ringOf(waits: readonly Wait[]): readonly string[] {
  const after = new Map<string, string[]>()
  for (const { first, then } of waits) after.set(first, [...(after.get(first) ?? []), then])
  const through = new Set<string>()
  const walk = (person: string, path: readonly string[]): readonly string[] => {
    const place = path.indexOf(person)
    if (place >= 0) return path.slice(place)
    if (through.has(person)) return []
    for (const next of after.get(person) ?? []) {
      const ring = walk(next, [...path, person])
      if (ring.length > 0) return ring
    }
    through.add(person)
    return []
  }
  for (const person of after.keys()) {
    const ring = walk(person, [])
    if (ring.length > 0) return ring
  }
  return []
}
