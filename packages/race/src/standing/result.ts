/** The result as it follows from the segments: summed, or points per segment or stage; ties as the rules break them. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { ruleValue, rulesOf, type Rule } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { gapBetween, type Distance } from './laps-and-sections.ts'
import {
  afterLosses,
  placesLost,
  type Moved,
  type NotCounted,
  type PlacesLost,
} from './places-lost.ts'
import { nothingOf, ourLaps, withChange, type OurLaps } from './our-laps.ts'
import { pointsOf, type Points } from './points.ts'
import { breakTie, grouped, type Tie, type TieBreak } from './ties.ts'
import { evidenceOf } from './tie-evidence.ts'
import {
  distanceOf,
  entrantOf,
  OURS,
  segmentResults,
  type SegmentResult,
} from './segment-results.ts'
import { compareDistances, scoringOf, sumOf, type Scoring } from './sums.ts'

export interface Result {
  readonly by: 'distance' | 'points'
  /** First to last; who shares a place stands together. */
  readonly lines: readonly ResultLine[]
  /** Ties that stay, and what each waits for. */
  readonly ties: readonly Tie[]
  /** What it is made of, in order. */
  readonly segments: readonly SegmentResult[]
  /** Points are awarded, and the table is not known yet: until then distances decide. */
  readonly pointsNotKnown: boolean
  /** Penalties that stand and have no effect on it, and why. */
  readonly notCounted: readonly NotCounted[]
}

export interface ResultLine {
  readonly place: number
  readonly entrant: string
  readonly ours: boolean
  readonly distance: Distance
  /** What the first has more. */
  readonly behind: Distance
  readonly points?: number
  /** What set it apart from those it was equal with. */
  readonly brokenBy?: TieBreak
  /** Places lost by penalty, as far as there were any to lose. */
  readonly placesLost?: number
  /** In how many of the segments it has a line. */
  readonly segments: number
  /** Whether it reached the least share of the winner's laps; true where the rules ask for none. */
  readonly classified: boolean
}

export interface OfSegments {
  /** Only segments of the programme before this place, counted from 0. */
  readonly before?: number
}

/**
 * From the classifications of segments entered up to `now`; undefined where there is none. Our own penalties in laps
 * and corrections that no segment holds are taken in. Where points are awarded distances decide until the first are.
 * Places lost move us down after ties were broken, points or not (common practice, no source). Whoever is excluded
 * comes last.
 */
export function resultOf(
  state: State,
  now: number,
  { before = Infinity }: OfSegments = {},
): Result | undefined {
  const entered = segmentResults(state, now)
  const segments = entered.filter(({ index }) => index < before)
  if (segments.length === 0) return undefined
  const rules = inForce(state, 'rules', now)?.rules ?? []
  const scoring = scoringOf(
    ruleValue(rules, 'scoring'),
    known(ruleValue(rules, 'tracks')?.sections),
  )
  // Against all: what a later one holds is not to be taken off the earlier ones.
  const ours = ourLaps(state, entered, now)
  const totals = totalsOf(segments, scoring, ours)
  const points = pointsOf(state, { rules, segments, scoring, ours, now })
  const lost = placesLost(state, entered, now)
  const { excluded } = ours
  return placed({ state, now, rules, segments, scoring, totals, points, excluded, lost })
}

export interface Total {
  readonly entrant: string
  readonly distance: Distance
  readonly best: Distance
  readonly segments: number
}

function totalsOf(
  segments: readonly SegmentResult[],
  scoring: Scoring,
  ours: OurLaps,
): ReadonlyMap<string, Total> {
  const driven = new Map<string, { readonly entrant: string; readonly distances: Distance[] }>()
  for (const { entry, lines } of segments) {
    for (const line of lines) {
      const key = entrantOf(line)
      const one = driven.get(key) ?? { entrant: line.entrant, distances: [] }
      driven.set(key, one)
      const distance = distanceOf(line)
      one.distances.push(key === OURS && ours.lost.has(entry) ? nothingOf(distance) : distance)
    }
  }
  return new Map(
    [...driven].map(([key, { entrant, distances }]): [string, Total] => {
      const sum = sumOf(distances, scoring)
      const distance = key === OURS ? withChange(sum, ours.change, scoring.sectionsPerLap) : sum
      const best = [...distances].sort(compareDistances).at(-1) ?? { laps: 0 }
      return [key, { entrant, distance, best, segments: distances.length }]
    }),
  )
}

interface ToPlace {
  readonly state: State
  readonly now: number
  readonly rules: readonly Rule[]
  readonly segments: readonly SegmentResult[]
  readonly scoring: Scoring
  readonly totals: ReadonlyMap<string, Total>
  readonly points: Points | undefined
  readonly excluded: boolean
  readonly lost: PlacesLost
}

function placed(of: ToPlace): Result {
  const { totals, points, excluded, segments, scoring, lost } = of
  const table = points && points.units.length > 0 ? points.sums : undefined
  const score = (key: string) => table?.get(key) ?? 0
  const compare = (a: string, b: string): number => {
    const out = Number(excluded && a === OURS) - Number(excluded && b === OURS)
    if (out !== 0 || table) return out || score(b) - score(a)
    const [one, other] = [totals.get(a), totals.get(b)]
    return one && other ? compareDistances(other.distance, one.distance) : 0
  }
  const order = rulesOf(of.rules, 'ties').flatMap(({ value }) => known(value.order) ?? [])
  const units = points?.units ?? segments
  const evidence = evidenceOf(of.state, of.now, { totals, units, segments })
  const broken = grouped([...totals.keys()].sort(compare), compare).map((group) =>
    breakTie(group, order, evidence),
  )
  const before = broken.flatMap(({ groups }) => groups)
  const { groups, down, nothingToLose } = afterLosses(before, OURS, lost.losses)
  const by = new Map(broken.flatMap((one) => [...one.by]))
  const first = totals.get(groups[0]?.[0] ?? '')
  const least = known(ruleValue(of.rules, 'classified')?.atLeast) ?? 0
  let place = 1
  const lines = groups.flatMap((group) => {
    const shared = place
    place += group.length
    return group.map((key): ResultLine => {
      const { entrant, distance, segments: driven } = totals.get(key) ?? NOTHING
      const winner = first?.distance ?? distance
      const brokenBy = by.get(key)
      return {
        ...{ place: shared, entrant, ours: key === OURS, segments: driven, distance },
        behind: gapBetween(winner, distance, scoring.sectionsPerLap),
        ...(table ? { points: score(key) } : {}),
        ...(brokenBy === undefined ? {} : { brokenBy }),
        ...(key === OURS && down > 0 ? { placesLost: down } : {}),
        classified: !(excluded && key === OURS) && distance.laps * 1_000 >= winner.laps * least,
      }
    })
  })
  const ties = broken.flatMap(({ ties }) => (down === 0 ? ties : ties.flatMap(withoutUs)))
  return {
    ...{ by: table ? 'points' : 'distance', lines, segments },
    ties: ties.map((tie) => named(tie, totals)),
    notCounted: notCountedOf(lost, nothingToLose),
    pointsNotKnown: points !== undefined && points.sums === undefined,
  }
}

/** Oldest first. */
function notCountedOf({ notCounted }: PlacesLost, idle: Moved['nothingToLose']) {
  const more = idle.map((penalty): NotCounted => ({ penalty, why: 'nothingToLose' }))
  return [...notCounted, ...more].sort((a, b) => a.penalty.at - b.penalty.at)
}

/** A penalty set us apart from those we were equal with. */
function withoutUs(tie: Tie): readonly Tie[] {
  const entrants = tie.entrants.filter((one) => one !== OURS)
  return entrants.length > 1 ? [{ ...tie, entrants }] : []
}

const NOTHING: Total = { entrant: '', distance: { laps: 0 }, best: { laps: 0 }, segments: 0 }

/** As they are called, not as they are told apart. */
function named(tie: Tie, totals: ReadonlyMap<string, Total>): Tie {
  return { ...tie, entrants: tie.entrants.map((key) => totals.get(key)?.entrant ?? key) }
}
