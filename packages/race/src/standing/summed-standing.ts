/** Where we stand over all segments so far, where the rules make the result of segments. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { ruleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { gapBetween, type Distance } from './laps-and-sections.ts'
import { resultOf, type Result, type ResultLine } from './result.ts'
import { standing } from './standing.ts'

export interface SummedStanding {
  readonly by: Result['by']
  readonly ours: ResultLine
  /** What the one ahead has more than we have, and we more than the one behind; absent where there is none. */
  readonly ahead?: { readonly place: number; readonly gap: Distance }
  readonly behind?: { readonly place: number; readonly gap: Distance }
}

/**
 * Undefined unless the rules say what the result is made of and the last classification with our line is one
 * segment's: one of a stage or the whole race is a sum already.
 */
export function summedStanding(state: State, now: number): SummedStanding | undefined {
  const rules = inForce(state, 'rules', now)?.rules ?? []
  if (!ruleValue(rules, 'scoring') || standing(state, now)?.scope !== 'segment') return undefined
  const { by, lines = [] } = resultOf(state, now) ?? {}
  const us = lines.findIndex((line) => line.ours)
  const ours = lines[us]
  if (!by || !ours) return undefined
  const sectionsPerLap = known(ruleValue(rules, 'tracks')?.sections)
  const [ahead, behind] = [lines[us - 1], lines[us + 1]]
  const gap = (a: ResultLine, b: ResultLine) => gapBetween(a.distance, b.distance, sectionsPerLap)
  return {
    ...{ by, ours },
    ...(ahead ? { ahead: { place: ahead.place, gap: gap(ahead, ours) } } : {}),
    ...(behind ? { behind: { place: behind.place, gap: gap(ours, behind) } } : {}),
  }
}
