/**
 * Penalties that no sum of laps holds. Places lost move us down in the result of the race. Time held is served on the
 * track, and costs the laps not driven meanwhile: nothing more is taken off, and where it was not served only race
 * control can say what it becomes (common practice, no source).
 */
import type { Body } from '../entry/kinds/index.ts'
import type { PenaltyState, State } from '../fold/state.ts'
import { penalties } from './penalties.ts'
import { resultHolding, type SegmentResult } from './segment-results.ts'

/** Why a penalty that stands has no effect on the result. */
export type WhyNotCounted =
  /** Time held, a stop-and-go or a drive-through that was not served yet. */
  | 'notServed'
  /** Places, and how many was not said. */
  | 'placesNotKnown'
  /** Places in a segment or stage, which are in its classification once that is entered again. */
  | 'inItsClassification'
  /** Places that take us no further down: none, or nobody is behind us, or those before it did already. */
  | 'nothingToLose'

export interface NotCounted {
  readonly penalty: PenaltyState
  readonly why: WhyNotCounted
}

export interface PlacesLost {
  /** Each that says how many of the whole race, oldest first. */
  readonly losses: readonly Loss[]
  readonly notCounted: readonly NotCounted[]
}

interface Loss {
  readonly penalty: PenaltyState
  readonly places: number
}

/**
 * How many places, as a penalty carries it: its shape has no number for them. Logs have it so and are read by it for
 * good, hence it is written out here: however screens put a number and its noun, this stays.
 */
export function placesInWords(places: number): string {
  return places === 1 ? '1 place' : `${places} places`
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
  const losses: Loss[] = []
  const notCounted: NotCounted[] = []
  for (const { penalty, status } of penalties(state, now)) {
    const { at, body, withdrawnAt } = penalty
    const stands = at <= now && (withdrawnAt === undefined || withdrawnAt > now)
    if (!stands) continue
    if (status === 'toServe') notCounted.push({ penalty, why: 'notServed' })
    if (body.what !== 'position') continue
    const places = placesOf(body)
    if (body.scope === 'race' && places !== undefined) losses.push({ penalty, places })
    else if (body.scope === 'race') notCounted.push({ penalty, why: 'placesNotKnown' })
    else if (!resultHolding(state, results, at)) {
      notCounted.push({ penalty, why: 'inItsClassification' })
    }
  }
  return { losses, notCounted }
}

export interface Moved {
  /** Each shares a place, first to last. */
  readonly groups: readonly (readonly string[])[]
  /** How many places further down than before. */
  readonly down: number
  readonly nothingToLose: readonly PenaltyState[]
}

/** One loss after the other. */
export function afterLosses(groups: Moved['groups'], who: string, losses: readonly Loss[]): Moved {
  const nothingToLose: PenaltyState[] = []
  let [moved, all] = [groups, 0]
  for (const { penalty, places } of losses) {
    all += places
    const next = movedDown(groups, who, all)
    if (aheadOf(next, who) === aheadOf(moved, who)) nothingToLose.push(penalty)
    moved = next
  }
  return { groups: moved, down: aheadOf(moved, who) - aheadOf(groups, who), nothingToLose }
}

/** How many; everybody where they are not among them. */
function aheadOf(groups: Moved['groups'], who: string): number {
  const at = groups.findIndex((group) => group.includes(who))
  return groups.slice(0, at < 0 ? undefined : at).flat().length
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
  const ahead = aheadOf(groups, who)
  const others = groups
    .map((group) => group.filter((one) => one !== who))
    .filter((group) => group.length > 0)
  let passed = 0
  const index = others.findIndex((group) => (passed += group.length) >= ahead + places)
  const at = index < 0 ? others.length : index + 1
  return [...others.slice(0, at), [who], ...others.slice(at)]
}
