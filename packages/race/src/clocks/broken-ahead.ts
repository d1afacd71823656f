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
 * Breaches that `after` has over and above `before`. Each is held against one there was: the same sentence first, then
 * one of the same limit, people, spans and stops, then one whose spans and stops overlap for the most part. A breach
 * that was there and grows is not new; one of the same limit and people elsewhere is.
 */
export function newlyBroken(
  before: readonly Finding[],
  after: readonly Finding[],
): readonly Finding[] {
  const there = new Set(before)
  const found = new Set(after)
  for (const isSame of [isUnchanged, concernsTheSame, isMovedOn]) {
    for (const finding of found) {
      const same = [...there].find((one) => one.id === finding.id && isSame(one, finding))
      if (!same) continue
      there.delete(same)
      found.delete(finding)
    }
  }
  return [...found]
}

function isUnchanged(one: Finding, other: Finding): boolean {
  return one.sentence === other.sentence && isSameList(one.people, other.people)
}

function concernsTheSame(one: Finding, other: Finding): boolean {
  const concerned = concernedBy(one)
  if (concerned.length === 0) return false
  return isSameList(one.people, other.people) && isSameList(concerned, concernedBy(other))
}

/**
 * At least half of what the two concern is concerned by both, or one of them concerns nothing else. Where neither
 * names a span or a stop, another value: of the same value the sentence would be another only elsewhere.
 */
function isMovedOn(one: Finding, other: Finding): boolean {
  const [these, those] = [concernedBy(one), concernedBy(other)]
  if (these.length === 0 && those.length === 0) return one.value !== other.value
  const both = these.filter((id) => those.includes(id)).length
  const either = these.length + those.length - both
  return (
    isSameList(one.people, other.people) &&
    (2 * both >= either || both === Math.min(these.length, those.length))
  )
}

function concernedBy({ spans, stops }: Finding): readonly string[] {
  return [...spans, ...stops]
}

function isSameList(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((id, place) => id === other[place])
}
