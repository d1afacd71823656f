/** Points from a table, for each segment or each stage. */
import type { State } from '../fold/state.ts'
import { inForce } from '../fold/in-force.ts'
import { rulesOf, type Rule } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { grouped } from './ties.ts'
import {
  distanceOf,
  entrantOf,
  withOurs,
  type ClassifiedLine,
  type SegmentResult,
} from './segment-results.ts'
import { compareDistances, sumOf, type Scoring } from './sums.ts'
import type { Distance } from './laps-and-sections.ts'

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
  readonly now: number
}

/**
 * Undefined where no points are awarded. A segment is placed as race control placed it; a stage so too where its
 * classification was entered, otherwise by the sum of its segments, once each of them has one. Beyond the table there
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
  return stages.flatMap((stage): readonly Unit[] => {
    const ids = items.filter((item) => item.stage === stage).map(({ id }) => id)
    const said = state.raceControl.classifications
      .filter(({ at, body }) => at <= now && body.scope === 'stage' && isOf(ids, body.segment))
      .at(-1)
    if (said) return [{ lines: withOurs(state, said.body.lines) }]
    const here = segments.filter((one) => one.stage === stage)
    const isWhole = ids.every(
      (id) => here.some(({ segment }) => segment === id) || isGone(state, id),
    )
    return isWhole && here.length > 0 ? [{ lines: placedBySum(here, asked.scoring) }] : []
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

function placedBySum(here: readonly SegmentResult[], scoring: Scoring): Unit['lines'] {
  const driven = new Map<
    string,
    { readonly line: ClassifiedLine; readonly distances: Distance[] }
  >()
  for (const line of here.flatMap(({ lines }) => lines)) {
    const one = driven.get(entrantOf(line)) ?? { line, distances: [] }
    driven.set(entrantOf(line), one)
    one.distances.push(distanceOf(line))
  }
  const sums = [...driven.values()].map(({ line, distances }) => ({
    line,
    sum: sumOf(distances, scoring),
  }))
  const compare = (a: (typeof sums)[number], b: (typeof sums)[number]) =>
    compareDistances(b.sum, a.sum)
  let place = 1
  return grouped(sums.sort(compare), compare).flatMap((group) => {
    const shared = place
    place += group.length
    return group.map(({ line }) => ({ ...line, place: shared }))
  })
}
