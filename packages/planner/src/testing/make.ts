/** Problems written by hand for tests: minutes instead of milliseconds, one plain default for everything. */
import type { Person } from '../problem/person.ts'
import type { Problem } from '../problem/problem.ts'
import type { Segment } from '../problem/segment.ts'

const MINUTE_MS = 60_000
/** Meeting time of the first green. */
export const GREEN_AT = 1_000_000_000

export function minutes(count: number): number {
  return count * MINUTE_MS
}

/** A lap every ten seconds and nothing else that counts, so that an hour is 360 laps. */
export function driver(id: string, of: Partial<Person> & { lapMs?: number } = {}): Person {
  const { lapMs = 10_000, ...rest } = of
  const pace = { lapMs, knownToMs: 0, slowerPerHourMs: 0, findingInLaps: 0 }
  return { id, duties: ['controller', 'post', 'wall', 'bench'], categories: [], pace, ...rest }
}

/** One segment of so many slots of so many minutes, a mandatory stop between each two. */
export function segment(slots: number, each: number, of: Partial<Segment> = {}): Segment {
  const stops = Array.from({ length: slots - 1 }, (_, place) => ({
    id: `stop-${place + 1}`,
    atMs: minutes((place + 1) * each),
    mandatory: true,
  }))
  return {
    ...{ id: 'one', after: 'start', startsAt: GREEN_AT, lengthMs: minutes(slots * each), stops },
    ...of,
  }
}

export function problem(of: Partial<Problem> = {}): Problem {
  return {
    segments: [segment(4, 15)],
    people: [driver('ada'), driver('ben')],
    ...{ rules: [], wishes: [], pins: [], joined: [] },
    stop: { standsMs: 0, costsMs: 0 },
    counting: { stops: true, laneChanges: false, changeWithOneself: false },
    balance: { toleranceMs: 0, lapsPerHour: 0 },
    dutyChangeLaps: 0,
    ...of,
  }
}
