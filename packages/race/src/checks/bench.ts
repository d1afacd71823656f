/**
 * What every check looks at: a timeline judged by rules. What several checks would each make of the same timeline is
 * made once for all of them.
 */
import type { Crew, CrewMember } from '../documents/crew.ts'
import type { Regulations } from '../documents/rules.ts'
import { ruleValue, rulesOf } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import type { TimelineStop } from '../timeline/stops.ts'
import type { Timeline, TimelineSpan } from '../timeline/timeline.ts'
import type { Stretch } from './stretches.ts'
import { stintsOf, type Stint } from './stints.ts'

export interface Judged {
  readonly regulations: Regulations
  readonly crew: Crew
  readonly timeline: Timeline
  /** Who said to be away, late or unwell, and from when until when: what is planned then cannot be. */
  readonly away?: ReadonlyMap<string, Stretch>
}

export interface Bench extends Judged {
  /** One for each person of the crew or of the timeline, in the crew's order. */
  readonly people: readonly BenchPerson[]
  readonly drivers: readonly BenchPerson[]
  /** The controller as it goes from hand to hand: all drivers' stints in order of beginning. */
  readonly turns: readonly Turn[]
  /** What is owed at stops is owed by mandatory ones. */
  readonly mandatoryStops: readonly TimelineStop[]
  /** What a stop is taken to last while its end is not known; 0 without a minimum. */
  readonly stopMinimumMs: number
  /** Milliseconds of race clock in all segments that have a length. */
  readonly raceMs: number
  /** Every duty of a segment, in order. */
  readonly spansIn: (segment: string) => readonly TimelineSpan[]
  readonly stopsIn: (segment: string) => readonly TimelineStop[]
  readonly nameOf: (person: string) => string
  readonly segmentName: (segment: string) => string
  /** Race clock counted on from segment to segment. */
  readonly raceClockMs: (segment: string, clockMs: number) => number
}

export interface BenchPerson {
  readonly id: string
  readonly name: string
  readonly categories: readonly string[]
  readonly member?: CrewMember
  /** Every duty, in order. */
  readonly spans: readonly TimelineSpan[]
  /** Those at the controller, and their ids. */
  readonly driving: readonly TimelineSpan[]
  readonly drivingIds: readonly string[]
  /** Those at a post. */
  readonly posts: readonly TimelineSpan[]
  readonly stints: readonly Stint[]
  /** What counts as driving, in order, in meeting time. */
  readonly driven: readonly Stretch[]
  readonly drivenMs: number
}

export interface Turn {
  readonly driver: BenchPerson
  readonly stint: Stint
}

export function benchOf(judged: Judged): Bench {
  const { regulations, crew, timeline } = judged
  const holes = [...timeline.notDriving, ...stopsThatDoNotCount(judged)]
  const offsets = new Map<string, number>()
  let raceMs = 0
  for (const segment of timeline.segments) {
    offsets.set(segment.id, raceMs)
    raceMs += segment.lengthMs ?? 0
  }
  const spansOf = groupsOf(timeline.spans, ({ person }) => person)
  const stopsIn = groupsOf(timeline.stops, ({ segment }) => segment)
  const spansIn = groupsOf(timeline.spans, ({ segment }) => segment)
  const people = everybody(crew, timeline).map((one) =>
    benchPerson(one, { judged, holes, spans: spansOf.get(one.id) ?? [] }),
  )
  const drivers = people.filter(({ stints }) => stints.length > 0)
  const names = new Map(people.map(({ id, name }) => [id, name]))
  return {
    regulations,
    crew,
    timeline,
    ...(judged.away ? { away: judged.away } : {}),
    people,
    raceMs,
    drivers,
    turns: turnsOf(drivers),
    mandatoryStops: timeline.stops.filter(({ mandatory }) => mandatory),
    stopMinimumMs: stopMinimumMs(regulations),
    spansIn: (segment) => spansIn.get(segment) ?? [],
    stopsIn: (segment) => stopsIn.get(segment) ?? [],
    nameOf: (person) => names.get(person) ?? 'Somebody',
    segmentName: (id) => {
      const segment = timeline.segments.find((one) => one.id === id)
      return segment?.name ?? (segment ? `segment ${segment.index + 1}` : 'a segment that is gone')
    },
    raceClockMs: (segment, clockMs) => (offsets.get(segment) ?? 0) + clockMs,
  }
}

/** Those a rule is about: all drivers, or those of its category. */
export function driversWho(bench: Bench, who: string | undefined): readonly BenchPerson[] {
  return who === undefined ? bench.drivers : bench.drivers.filter((one) => isOf(one, who))
}

/** Categories are compared without regard to capitals. */
export function isOf({ categories }: BenchPerson, who: string): boolean {
  return categories.some((category) => category.toLowerCase() === who.toLowerCase())
}

interface Somebody {
  readonly id: string
  readonly name: string
  readonly member?: CrewMember
}

function everybody(crew: Crew, { spans }: Timeline): readonly Somebody[] {
  const members: Somebody[] = crew.people.map((one) => ({
    id: one.id,
    name: one.name,
    member: one,
  }))
  const known = new Set(members.map(({ id }) => id))
  const strangers = new Set(spans.map(({ person }) => person).filter((one) => !known.has(one)))
  return [...members, ...[...strangers].map((id) => ({ id, name: 'Somebody not in the crew' }))]
}

interface ToPutTogether {
  readonly judged: Judged
  readonly holes: readonly Stretch[]
  readonly spans: readonly TimelineSpan[]
}

function benchPerson({ id, name, member }: Somebody, of: ToPutTogether): BenchPerson {
  const { regulations, timeline } = of.judged
  const { spans, holes } = of
  const driving = spans.filter(({ duty }) => duty === 'controller')
  const stints = stintsOf({ driving, timeline, regulations, holes })
  const driven = stints.flatMap((stint) => stint.driven)
  return {
    id,
    name,
    spans,
    driving,
    drivingIds: driving.map((span) => span.id),
    posts: spans.filter(({ duty }) => duty === 'post'),
    stints,
    driven,
    ...(member ? { member } : {}),
    categories: member?.categories ?? [],
    drivenMs: driven.reduce((sum, { fromAt, toAt }) => sum + toAt - fromAt, 0),
  }
}

function turnsOf(drivers: readonly BenchPerson[]): readonly Turn[] {
  return drivers
    .flatMap((driver) => driver.stints.map((stint): Turn => ({ driver, stint })))
    .sort((a, b) => a.stint.fromAt - b.stint.fromAt || a.stint.toAt - b.stint.toAt)
}

function stopMinimumMs({ rules }: Regulations): number {
  return known(ruleValue(rules, 'stopMinimum')?.minimumMs) ?? 0
}

function groupsOf<T>(all: readonly T[], by: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>()
  for (const one of all) {
    const name = by(one)
    const group = groups.get(name)
    if (group) group.push(one)
    else groups.set(name, [one])
  }
  return groups
}

/** Where a stop does not count as driving: from the car in to the car out, or for the minimum while it is planned. */
function stopsThatDoNotCount({ regulations, timeline }: Judged): readonly Stretch[] {
  const rule = rulesOf(regulations.rules, 'countsAsDriving').find(
    ({ value }) => value.what === 'stops',
  )
  if (!rule || known(rule.value.counts) !== false) return []
  const minimumMs = stopMinimumMs(regulations)
  return timeline.stops.map(({ at, outAt }) => ({ fromAt: at, toAt: outAt ?? at + minimumMs }))
}
