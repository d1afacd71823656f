/** Every rotation of a meeting tried out, where the exhaustive search of the planner's tests can be used. */
import type { Problem, Rule } from '@pitlamp/planner'
import { bestOfAll } from '../../packages/planner/src/testing/every.ts'

/** No more than are tried in a second or two. */
const MOST_TRIED = 40_000

/** It knows one post without a name, stops that are all mandatory, and no wishes, lines kept, walls and benches. */
export function canBeTried(problem: Problem): boolean {
  const { rules, wishes, pins, segments, counting } = problem
  if (wishes.length > 0 || pins.length > 0) return false
  if (segments.some(({ stops }) => stops.some(({ mandatory, task }) => !mandatory || task)))
    return false
  const wanted = rules.filter(({ kind }) => kind === 'dutyWanted')
  if (wanted.length > 1 || !rules.every(isKnown)) return false
  const slots = segments.reduce((sum, one) => sum + slotsIn(one), 0)
  const choices =
    problem.people.length ** (wanted.length + 1) * (counting.changeWithOneself ? 2 : 1)
  return (choices * (segments.some(({ gridMs }) => gridMs) ? 2 : 1)) ** slots <= MOST_TRIED
}

export const bestTried = bestOfAll

function slotsIn({ lengthMs, gridMs = Infinity, cutsMs = [], stops }: Problem['segments'][number]) {
  const edges = new Set([...cutsMs, ...stops.map(({ atMs }) => atMs)])
  for (let ms = gridMs; ms < lengthMs; ms += gridMs) edges.add(ms)
  return edges.size + 1
}

function isKnown(rule: Rule): boolean {
  switch (rule.kind) {
    case 'dutyWanted':
      return rule.duty === 'post' && rule.count === 1 && rule.post === undefined
    case 'mayNot':
      return rule.duty === 'post' || rule.duty === 'controller'
    case 'energy':
      return rule.fullLaps === undefined
    case 'relief':
      return !rule.before || !rule.byMs
    default:
      return true
  }
}
