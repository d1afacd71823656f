/** Distances of several segments put together as the rules have it. */
import type { RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { addDistance, type Distance } from './laps-and-sections.ts'

export interface Scoring {
  readonly by: 'laps' | 'lapsAndSections'
  readonly sections: 'carriedOn' | 'added' | 'dropped'
  readonly sectionsPerLap?: number
}

/** While the rules do not say what becomes of sections, they are added up where they were entered. */
export function scoringOf(
  rule: RuleValue<'scoring'> | undefined,
  sectionsPerLap: number | undefined,
): Scoring {
  const by = known(rule?.by) ?? 'lapsAndSections'
  const sections = known(rule?.sections) ?? 'added'
  return { by, sections, ...(sectionsPerLap === undefined ? {} : { sectionsPerLap }) }
}

/**
 * In the order in which they were driven. Added: laps to laps, sections to sections. Carried on, each segment begins
 * in the section where the one before it ended, and dropped, at the line: of both only the last segment's section
 * counts. `{ laps: 0 }` for none.
 */
export function sumOf(distances: readonly Distance[], scoring: Scoring): Distance {
  const { by, sections, sectionsPerLap } = scoring
  const laps = distances.reduce((sum, one) => sum + one.laps, 0)
  const last = distances.at(-1)
  if (by === 'laps' || !last) return { laps }
  if (sections !== 'added') {
    return last.sections === undefined ? { laps } : { laps, sections: last.sections }
  }
  return distances
    .slice(1)
    .reduce((sum, one) => addDistance(sum, one, sectionsPerLap), distances[0] ?? last)
}

/** Above 0 where `a` came further; a section that is not known is taken for the line. */
export function compareDistances(a: Distance, b: Distance): number {
  return a.laps - b.laps || (a.sections ?? 0) - (b.sections ?? 0)
}
