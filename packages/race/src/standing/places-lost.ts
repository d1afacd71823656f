/**
 * Penalties that no sum of laps holds. Places lost move us down in the result of the race. Time held is served on the
 * track, and costs the laps not driven meanwhile: nothing more is taken off, and where it was not served only race
 * control can say what it becomes (common practice, no source).
 */
import type { Body } from '../entry/kinds/index.ts'
import type { PenaltyState, State } from '../fold/state.ts'
import { counted } from '../sentences/plural.ts'
import { penalties } from './penalties.ts'
import type { SegmentResult } from './segment-results.ts'

/** Why a penalty that stands has no effect on the result. */
export type WhyNotCounted =
  /** Time held, a stop-and-go or a drive-through that was not served yet. */
  | 'notServed'
  /** Places, and how many was not said. */
  | 'placesNotKnown'
  /** Places in a segment or stage, which are in its classification once that is entered again. */
  | 'inItsClassification'

export interface NotCounted {
  readonly penalty: PenaltyState
  readonly why: WhyNotCounted
}

export interface PlacesLost {
  /** All together; 0 where there are none. */
  readonly places: number
  readonly notCounted: readonly NotCounted[]
}

/** How many places, as a penalty carries it: its shape has no number for them. */
export function placesInWords(places: number): string {
  return counted(places, 'place')
}

/** Undefined where it does not say. */
export function placesOf({ words }: Pick<Body<'penalty.1'>, 'words'>): number | undefined {
  const [, number] = /^(\d{1,3}) places?$/.exec(words?.trim() ?? '') ?? []
  return number === undefined ? undefined : Number(number)
}

/** Of what was given up to `now` and was not withdrawn. */
export function placesLost(
  state: State,
  results: readonly SegmentResult[],
  now: number,
): PlacesLost {
  let places = 0
  const notCounted: NotCounted[] = []
  for (const { penalty, status } of penalties(state, now)) {
    const { at, body, withdrawnAt } = penalty
    const stands = at <= now && (withdrawnAt === undefined || withdrawnAt > now)
    if (!stands) continue
    if (status === 'toServe') notCounted.push({ penalty, why: 'notServed' })
    if (body.what !== 'position') continue
    const lost = placesOf(body)
    if (body.scope === 'race' && lost !== undefined) places += lost
    else if (body.scope === 'race') notCounted.push({ penalty, why: 'placesNotKnown' })
    else if (!isTaken(results, at)) notCounted.push({ penalty, why: 'inItsClassification' })
  }
  return { places, notCounted }
}

/** The classification of the run it was given in, or after, was entered since. */
function isTaken(results: readonly SegmentResult[], at: number): boolean {
  return results.some(({ run, at: entered }) => run && run.greenAt <= at && at <= entered)
}

/**
 * So many places down, at most to the last; behind those who share the place it comes to. Each group shares a place,
 * first to last.
 */
export function movedDown(
  groups: readonly (readonly string[])[],
  who: string,
  places: number,
): readonly (readonly string[])[] {
  const from = groups.findIndex((group) => group.includes(who))
  if (places <= 0 || from < 0) return groups
  const ahead = groups.slice(0, from).flat().length
  const others = groups
    .map((group) => group.filter((one) => one !== who))
    .filter((group) => group.length > 0)
  let passed = 0
  const index = others.findIndex((group) => (passed += group.length) >= ahead + places)
  const at = index < 0 ? others.length : index + 1
  return [...others.slice(0, at), [who], ...others.slice(at)]
}
