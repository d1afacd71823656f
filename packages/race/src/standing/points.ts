/** Points from a table, for each segment or each stage. */
import type { State } from '../fold/state.ts'
import { inForce } from '../fold/in-force.ts'
import { rulesOf, type Rule } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { grouped } from './ties.ts'
import {
  distanceOf,
  entrantOf,
  OURS,
  withOurs,
  type ClassifiedLine,
  type SegmentResult,
} from './segment-results.ts'
import { compareDistances, sumOf, type Scoring } from './sums.ts'
import type { Distance } from './laps-and-sections.ts'
import { changeIn, nothingOf, withChange, type OurLaps } from './our-laps.ts'

/** What is placed on its own: a segment, or a stage. */
export interface Unit {
  readonly lines: readonly Pick<ClassifiedLine, 'place' | 'entrant' | 'ours'>[]
}

export interface Points {
  /** Those that are whole. */
  readonly units: readonly Unit[]
  /** By entrant; absent while the table is not known. */
  readonly sums?: ReadonlyMap<string, number>
}

export interface Asked {
  readonly rules: readonly Rule[]
  readonly segments: readonly SegmentResult[]
  readonly scoring: Scoring
  readonly ours: OurLaps
  readonly now: number
}

/**
 * Undefined where no points are awarded. A segment is placed as race control placed it; a stage so too where its
 * classification was entered, otherwise by the sum of its segments, once each of them has one, with what race control
 * took or gave that none of them holds; what it did between two stages goes to the one before, and before the first
 * green to the first stage (common practice, no source). Beyond the table there
 * are no points; who shares a place has that place's points (common practice, no source).
 */
export function pointsOf(state: State, asked: Asked): Points | undefined {
  const [rule] = rulesOf(asked.rules, 'points')
  if (!rule) return undefined
  const units = rule.value.per === 'segment' ? asked.segments : stagesOf(state, asked)
  const table = known(rule.value.table)
  if (!table) return { units }
  const sums = new Map<string, number>()
  for (const { lines } of units) {
    for (const line of lines) {
      const key = entrantOf({ ...line, laps: 0 })
      sums.set(key, (sums.get(key) ?? 0) + (table[line.place - 1] ?? 0))
    }
  }
  return { units, sums }
}

function stagesOf(state: State, asked: Asked): readonly Unit[] {
  const { segments, now } = asked
  const items = (inForce(state, 'rules', now)?.programme ?? []).filter(
    (item) => item.kind === 'segment',
  )
  const stages = [...new Set(items.flatMap(({ stage }) => stage ?? []))]
  return stages.flatMap((stage, place): readonly Unit[] => {
    const ids = items.filter((item) => item.stage === stage).map(({ id }) => id)
    const said = state.raceControl.classifications
      .filter(({ at, body }) => at <= now && body.scope === 'stage' && isOf(ids, body.segment))
      .at(-1)
    if (said) return [{ lines: withOurs(state, said.body.lines) }]
    const here = segments.filter((one) => one.stage === stage)
    const isWhole = ids.every(
      (id) => here.some(({ segment }) => segment === id) || isGone(state, id),
    )
    const isHere = (segment?: string) =>
      isOf(ids, segment) || (segment === undefined && place === 0)
    const change = changeIn(asked.ours, isHere)
    return isWhole && here.length > 0 ? [{ lines: placedBySum(here, { ...asked, change }) }] : []
  })
}

function isOf(ids: readonly string[], segment: string | undefined): boolean {
  return segment !== undefined && ids.includes(segment)
}

/** Abandoned, so that no classification of it will come. */
function isGone(state: State, segment: string): boolean {
  const last = state.raceControl.segmentChanges
    .filter(({ body }) => body.segment === segment)
    .at(-1)
  return last?.body.change.what === 'abandoned'
}

function placedBySum(
  here: readonly SegmentResult[],
  { scoring, ours, change }: Asked & { readonly change: OurLaps['change'] },
): Unit['lines'] {
  const driven = new Map<
    string,
    { readonly line: ClassifiedLine; readonly distances: Distance[] }
  >()
  for (const { entry, lines } of here) {
    for (const line of lines) {
      const key = entrantOf(line)
      const one = driven.get(key) ?? { line, distances: [] }
      driven.set(key, one)
      const isLost = key === OURS && ours.lost.has(entry)
      one.distances.push(isLost ? nothingOf(distanceOf(line)) : distanceOf(line))
    }
  }
  const sums = [...driven].map(([key, { line, distances }]) => {
    const sum = sumOf(distances, scoring)
    return { line, sum: key === OURS ? withChange(sum, change, scoring.sectionsPerLap) : sum }
  })
  const compare = (a: (typeof sums)[number], b: (typeof sums)[number]) =>
    compareDistances(b.sum, a.sum)
  let place = 1
  return grouped(sums.sort(compare), compare).flatMap((group) => {
    const shared = place
    place += group.length
    return group.map(({ line }) => ({ ...line, place: shared }))
  })
}
