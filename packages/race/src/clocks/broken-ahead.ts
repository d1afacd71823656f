/** Which limits the race breaks, so far and as it is planned to go on. */
import { findings, type Finding } from '../checks/findings.ts'
import type { Stretch } from '../checks/stretches.ts'
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { continuedTimeline } from '../timeline/timeline.ts'

/** Of what was raced and what is still planned, by the rules in force. Empty before rules are adopted. */
export function brokenAhead(state: State, now: number): readonly Finding[] {
  const regulations = inForce(state, 'rules', now)
  if (!regulations) return []
  const crew = inForce(state, 'crew', now) ?? { people: [] }
  const timeline = continuedTimeline(state, now)
  return findings({ regulations, crew, timeline, notDriving: notDriving(state, now) }).filter(
    ({ verdict }) => verdict === 'broken',
  )
}

/** Driving held under an interruption, by the policy of its time. */
function notDriving(state: State, now: number): readonly Stretch[] {
  return state.raceControl.interruptions
    .filter(({ policy }) => policy.driving === 'holds')
    .map(({ fromAt, toAt }) => ({ fromAt, toAt: toAt ?? now }))
}

/**
 * Breaches that `after` has over and above `before`: of one limit and the same people, as many more as there are.
 * A breach that was there and grows is not new.
 */
export function newlyBroken(
  before: readonly Finding[],
  after: readonly Finding[],
): readonly Finding[] {
  const there = new Map<string, number>()
  for (const finding of before) there.set(keyOf(finding), (there.get(keyOf(finding)) ?? 0) + 1)
  return after.filter((finding) => {
    const left = there.get(keyOf(finding)) ?? 0
    there.set(keyOf(finding), left - 1)
    return left <= 0
  })
}

function keyOf({ id, people }: Finding): string {
  return `${id} ${people.join(' ')}`
}
