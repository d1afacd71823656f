/** A meeting's timeline judged by its rules, each instant by those that were in force then. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import type { Timeline } from '../timeline/timeline.ts'
import { awayNow } from '../time/away.ts'
import { findings, type Finding, type InForce } from './findings.ts'

/**
 * Findings of the rules in force at the end, and before them breaches of what earlier versions demanded while they
 * held. Nothing before rules are adopted.
 */
export function judge(state: State, timeline: Timeline, now: number): readonly Finding[] {
  const crew = inForce(state, 'crew', now) ?? { people: [] }
  const away = awayNow(state, now)
  return periodsOf(state).flatMap((period) => {
    const regulations = inForce(state, 'rules', period.isLast ? Infinity : period.fromAt)
    if (!regulations) return []
    const found = findings({ regulations, crew, timeline, away }, period)
    return period.isLast ? found : found.filter(({ verdict }) => verdict === 'broken')
  })
}

/** From change to change of the rules in force; the first reaches back for ever, the last has no end. */
function periodsOf(state: State): readonly InForce[] {
  const changes = [...new Set(state.documents.rules.map(({ appliesFrom }) => appliesFrom))]
    .sort((a, b) => a - b)
    .filter((at, place, all) => {
      const before = all[place - 1]
      return before === undefined || inForce(state, 'rules', at) !== inForce(state, 'rules', before)
    })
  return changes.map((at, place) => ({
    fromAt: place === 0 ? -Infinity : at,
    toAt: changes[place + 1] ?? Infinity,
    isLast: place === changes.length - 1,
  }))
}
