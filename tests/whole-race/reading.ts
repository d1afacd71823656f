/** What the tests read off a state, in seconds after the first green. */
import {
  compulsoryRepairs,
  judge,
  raceTimeline,
  stopClock,
  stopVerdict,
  type Finding,
  type State,
} from '@pitlamp/race'
import { at } from '../scripted-race.ts'

export function raceFindings(state: State, now: number): readonly Finding[] {
  return judge(state, raceTimeline(state, now), now)
}

export function ofRule(found: readonly Finding[], rule: string): readonly Finding[] {
  return found.filter((finding) => finding.rule === rule)
}

export function swap(drives: string, steps: string) {
  return [
    { person: drives, duty: 'controller' as const },
    { person: steps, duty: 'wall' as const },
  ]
}

export function lastVerdict(state: State) {
  return stopVerdict(state, state.car.stops.at(-1)?.entry ?? '')
}

/** Of the repair that must be made, in seconds. */
export function limitLeft(state: State, seconds: number): number {
  const [repair] = compulsoryRepairs(state, at(seconds))
  return (repair?.limit?.remainingMs ?? NaN) / 1_000
}

export function stopAt(state: State, seconds: number) {
  const { remainingMs = NaN, goAt, mandatory, running } = stopClock(state, at(seconds)) ?? {}
  const remaining = remainingMs / 1_000
  return goAt === undefined
    ? { remaining, mandatory, running }
    : { remaining, goAt: (goAt - at(0)) / 1_000, mandatory, running }
}
