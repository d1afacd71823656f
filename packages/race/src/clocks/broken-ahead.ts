/** Which limits the race breaks, so far and as it is planned to go on. */
import type { Finding } from '../checks/findings.ts'
import { judge } from '../checks/judge.ts'
import type { State } from '../fold/state.ts'
import { continuedTimeline } from '../timeline/timeline.ts'

/** Of what was raced and what is still planned. Empty before rules are adopted. */
export function brokenAhead(state: State, now: number): readonly Finding[] {
  return judge(state, continuedTimeline(state, now), now).filter(
    ({ verdict }) => verdict === 'broken',
  )
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
