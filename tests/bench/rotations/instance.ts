/**
 * Rotations to be worked out, made from a seed: a race on fixed lanes in segments of six slots of a quarter of an
 * hour, people of different pace, and the rules a long race has. All numbers are common practice, no source.
 */
import type { Person, Problem, Rule, Segment, Span } from '@pitlamp/planner'
import { chanceOf, type Chance } from '../../../packages/planner/src/testing/chance.ts'

const MINUTE_MS = 60_000
const SLOT_MS = 15 * MINUTE_MS
const LANE_CHANGE_MS = 5 * MINUTE_MS
const GREEN_AT = 1_000_000_000
const LANES = 6

export interface Size {
  readonly slots: number
  readonly people: number
}

export function fixedStops({ slots, people }: Size, seed: number): Problem {
  const chance = chanceOf(seed)
  const each = Math.min(6, slots)
  return {
    segments: Array.from({ length: slots / each }, (_, place) => segmentOf(place, each)),
    people: Array.from({ length: people }, (_, place) => personOf(place, chance)),
    rules: rulesOf({ slots, people }),
    ...{ wishes: [], pins: [], joined: [], dutyChangeLaps: 0.2 },
    stop: { standsMs: 45_000, costsMs: 60_000 },
    counting: { stops: true, laneChanges: false, changeWithOneself: false },
    balance: { toleranceMs: SLOT_MS, lapsPerHour: 40 },
  }
}

function segmentOf(place: number, each: number): Segment {
  const lengthMs = each * SLOT_MS
  return {
    id: `segment-${place + 1}`,
    after: place === 0 ? 'start' : 'laneChange',
    startsAt: GREEN_AT + place * (lengthMs + LANE_CHANGE_MS),
    lengthMs,
    lane: (place % LANES) + 1,
    stops: Array.from({ length: each - 1 }, (_, stop) => ({
      id: `stop-${place + 1}-${stop + 1}`,
      atMs: (stop + 1) * SLOT_MS,
      mandatory: true,
    })),
  }
}

function personOf(place: number, { between }: Chance): Person {
  return {
    id: `person-${place + 1}`,
    duties: ['controller', 'post', 'wall', 'bench'],
    categories: place % 4 === 3 ? ['novice'] : [],
    pace: {
      lapMs: between(9_000, 10_500),
      knownToMs: between(50, 250),
      slowerPerHourMs: between(100, 500),
      findingInLaps: between(5, 25) / 10,
      laneAddsMs: Object.fromEntries(
        Array.from({ length: LANES }, (_, lane) => [lane + 1, between(0, 400)]),
      ),
    },
  }
}

function rulesOf({ slots, people }: Size): readonly Rule[] {
  const fairMs = (slots * SLOT_MS) / people
  return [
    { id: 'continuous', kind: 'continuousDriving', atMostMs: 60 * MINUTE_MS },
    { id: 'rest', kind: 'driverRest', atLeastMs: 30 * MINUTE_MS, marshallingIsRest: true },
    { id: 'rolling', kind: 'rollingDriving', atMostMs: 120 * MINUTE_MS, withinMs: 300 * MINUTE_MS },
    { id: 'least', kind: 'drivingTime', atLeastMs: Math.floor(fairMs / 2) },
    { id: 'drivers', kind: 'numberOfDrivers', atLeast: people },
    { id: 'marshal', kind: 'dutyWanted', duty: 'post', count: 1 },
    { id: 'shift', kind: 'marshalShift', atMostMs: 60 * MINUTE_MS, restMs: 30 * MINUTE_MS },
    { id: 'novice', kind: 'followingDrivers', first: 'novice', must: false, then: 'novice' },
  ]
}

/** Stops wherever the program wants them on a grid of five minutes, at least three quarters of an hour a stint. */
export function chosenStops(of: { hours: number; people: number }, seed: number): Problem {
  const slots = of.hours * 4
  const fixed = fixedStops({ slots, people: of.people }, seed)
  const segments = fixed.segments.map((segment) => ({
    ...segment,
    stops: [],
    gridMs: 5 * MINUTE_MS,
  }))
  const left = fixed.rules.filter(
    ({ id }) => !['marshal', 'shift', 'rolling', 'continuous'].includes(id),
  )
  const rules: readonly Rule[] = [
    ...left,
    { id: 'long', kind: 'continuousDriving', atLeastMs: 30 * MINUTE_MS, atMostMs: 75 * MINUTE_MS },
  ]
  return { ...fixed, segments, rules }
}

/** Half an hour into the second segment, and the third person has left. */
export function somebodyGone(problem: Problem, spans: readonly Span[]): Problem {
  const nowMs = 30 * MINUTE_MS
  const segments = problem.segments.map((segment, place) => {
    const untilMs = place === 0 ? segment.lengthMs : place === 1 ? nowMs : 0
    if (untilMs === 0) return segment
    const raced = spans
      .filter((span) => span.segment === segment.id && span.fromMs < untilMs)
      .map((span) => ({ ...span, toMs: Math.min(span.toMs, untilMs) }))
    return { ...segment, past: { untilMs, spans: raced } }
  })
  const leftAt = (problem.segments[1]?.startsAt ?? 0) + nowMs
  const people = problem.people.map((person, place) =>
    place === 2 ? { ...person, there: [{ toAt: leftAt }] } : person,
  )
  const rules = problem.rules.filter(({ id }) => id !== 'drivers' && id !== 'least')
  return { ...problem, segments, people, rules }
}

/** Everybody a little less than their share: it cannot be covered. */
export function colliding(size: Size, seed: number): Problem {
  const problem = fixedStops(size, seed)
  const fairMs = (size.slots * SLOT_MS) / size.people
  const rules: readonly Rule[] = [
    ...problem.rules.filter(({ id }) => id !== 'least'),
    { id: 'most', kind: 'drivingTime', atMostMs: fairMs - SLOT_MS },
    { id: 'stints', kind: 'stintsEach', atMost: 4 },
  ]
  return { ...problem, rules }
}
