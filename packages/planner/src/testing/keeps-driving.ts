/** Whether a sketch keeps a rule about driving: from the words of the rule. */
import type { Problem } from '../problem/problem.ts'
import type { Rule } from '../rules/index.ts'
import { lengthOf, shiftsOf, stintsOf, type Sketch, type SketchStint } from './sketch.ts'

export function keepsDriving(rule: Rule, sketch: Sketch, problem: Problem): boolean {
  const stints = stintsOf(sketch, problem)
  const isOf = (person: string, who: string | undefined) =>
    who === undefined ||
    problem.people.some(({ id, categories }) => id === person && categories.includes(who))
  const who = 'who' in rule ? rule.who : undefined
  const drivers = [...new Set(stints.map(({ person }) => person))].filter((one) => isOf(one, who))
  const of = (person: string) => stints.filter((one) => one.person === person)
  const totalMs = (person: string) => of(person).reduce((sum, one) => sum + lengthOf(one.driven), 0)
  const raceMs = problem.segments.reduce((sum, { lengthMs }) => sum + lengthMs, 0)
  const inSegments = (person: string) =>
    new Set(sketch.slots.filter((_, at) => sketch.drivers[at] === person).map((one) => one.segment))
      .size
  const within = (value: number, { atLeast = 0, atMost = Infinity }: Limits) =>
    value >= atLeast && value <= atMost
  switch (rule.kind) {
    case 'drivingTime':
      return drivers.every((one) =>
        within(totalMs(one), { atLeast: rule.atLeastMs, atMost: rule.atMostMs }),
      )
    case 'drivingShare': {
      if (raceMs <= (rule.longerThanMs ?? 0)) return true
      return drivers.every((one) => {
        const share = totalMs(one) * 1_000
        return share >= (rule.atLeast ?? 0) * raceMs && share <= (rule.atMost ?? Infinity) * raceMs
      })
    }
    case 'drivingSegments':
      return drivers.every((one) => within(inSegments(one), rule))
    case 'drivingSpread': {
      const totals = drivers.map(totalMs)
      return Math.max(...totals) - Math.min(...totals) <= rule.atMostMs
    }
    case 'equalShare':
      return isEqual(rule, { drivers, totalMs, inSegments, problem })
    default:
      return keepsOrder(rule, sketch, problem)
  }
}

function keepsOrder(rule: Rule, sketch: Sketch, problem: Problem): boolean {
  const stints = stintsOf(sketch, problem)
  const isOf = (person: string, who: string | undefined) =>
    who === undefined ||
    problem.people.some(({ id, categories }) => id === person && categories.includes(who))
  const who = 'who' in rule ? rule.who : undefined
  const drivers = [...new Set(stints.map(({ person }) => person))].filter((one) => isOf(one, who))
  const of = (person: string) => stints.filter((one) => one.person === person)
  const raceMs = problem.segments.reduce((sum, { lengthMs }) => sum + lengthMs, 0)
  const within = (value: number, { atLeast = 0, atMost = Infinity }: Limits) =>
    value >= atLeast && value <= atMost
  switch (rule.kind) {
    case 'continuousDriving':
      return stints
        .filter(({ person }) => isOf(person, who))
        .every((one) =>
          within(lengthOf(one.driven), { atLeast: rule.atLeastMs, atMost: rule.atMostMs }),
        )
    case 'stintsEach':
      return drivers.every((one) => within(of(one).length, rule))
    case 'numberOfDrivers':
      return within(drivers.length, rule)
    case 'numberOfChanges':
      return within(rule.of === 'stints' ? stints.length : changesIn(stints), rule)
    case 'stintsInARow':
      return longestRow(stints) <= rule.atMost
    case 'followingDrivers':
      return stints.slice(1).every((to, place) => {
        const from = stints[place]
        if (!from || from.person === to.person || !isOf(from.person, rule.first)) return true
        return isOf(to.person, rule.then) === rule.must
      })
    case 'endDriver': {
      const stint = rule.which === 'first' ? stints[0] : stints.at(-1)
      return stint === undefined || isOf(stint.person, rule.who) === rule.must
    }
    case 'rollingDriving':
      return drivers.every((one) => {
        const pieces = of(one).flatMap(({ driven }) => driven)
        return mostWithin(pieces, rule.withinMs) <= rule.atMostMs
      })
    case 'driverRest':
      return drivers.every((one) => restsEnough(rule, of(one), shiftsOf(sketch)))
    case 'blockDriving':
      return drivers.every((one) => keepsBlocks(rule, one, { sketch, problem, raceMs }))
    default:
      throw new Error(`${rule.kind} is not about driving.`)
  }
}

interface Limits {
  readonly atLeast?: number | undefined
  readonly atMost?: number | undefined
}

function isEqual(
  { of, tolerance, toleranceMs }: Rule & { kind: 'equalShare' },
  all: {
    drivers: readonly string[]
    totalMs: (one: string) => number
    inSegments: (one: string) => number
    problem: Problem
  },
): boolean {
  const { drivers, problem } = all
  if (of === 'segments') {
    const each = drivers.map(all.inSegments)
    const fair = each.reduce((sum, one) => sum + one, 0) / drivers.length
    return each.every((one) => Math.abs(one - fair) * 1_000 <= fair * (tolerance ?? 0) + 1e-6)
  }
  const fairMs =
    problem.segments.reduce((sum, one) => sum + (one.lane === 'sitOut' ? 0 : one.lengthMs), 0) /
    drivers.length
  const offMs = Math.min(
    tolerance === undefined ? Infinity : (fairMs * tolerance) / 1_000,
    toleranceMs ?? (tolerance === undefined ? 0 : Infinity),
  )
  return drivers.every((one) => Math.abs(all.totalMs(one) - fairMs) < offMs + 1)
}

function changesIn(stints: readonly SketchStint[]): number {
  return stints.slice(1).filter((to, place) => {
    const from = stints[place]
    return from && (from.person !== to.person || to.fromAt <= from.toAt)
  }).length
}

function longestRow(stints: readonly SketchStint[]): number {
  let [longest, row] = [0, 0]
  stints.forEach(({ person }, place) => {
    row = stints[place - 1]?.person === person ? row + 1 : 1
    longest = Math.max(longest, row)
  })
  return longest
}

/** Tried minute by minute. */
function mostWithin(pieces: readonly (readonly [number, number])[], withinMs: number): number {
  const [first, last] = [Math.min(...pieces.map(([f]) => f)), Math.max(...pieces.map(([, t]) => t))]
  let most = 0
  for (let at = first - withinMs; at <= last; at += 60_000) {
    const inside = pieces.map(([f, t]) => Math.max(0, Math.min(t, at + withinMs) - Math.max(f, at)))
    most = Math.max(
      most,
      inside.reduce((sum, one) => sum + one, 0),
    )
  }
  return most
}

function restsEnough(
  { atLeastMs = 0, shareOfStint = 0, marshallingIsRest }: Rule & { kind: 'driverRest' },
  stints: readonly SketchStint[],
  shifts: readonly Omit<SketchStint, 'driven'>[],
): boolean {
  return stints.slice(1).every((after, place) => {
    const before = stints[place]
    if (!before) return true
    const owedMs = Math.max(atLeastMs, (lengthOf(before.driven) * shareOfStint) / 1_000)
    const inside = shifts.filter(
      ({ person, fromAt, toAt }) =>
        !marshallingIsRest &&
        person === after.person &&
        fromAt >= before.toAt &&
        toAt <= after.fromAt,
    )
    const edges = [
      before.toAt,
      ...inside.flatMap(({ fromAt, toAt }) => [fromAt, toAt]),
      after.fromAt,
    ]
    const free = edges.flatMap((at, edge) => (edge % 2 === 1 ? [at - (edges[edge - 1] ?? 0)] : []))
    return Math.max(...free) >= owedMs
  })
}

function keepsBlocks(
  { blockMs, atLeastMs = 0, atMostMs = Infinity }: Rule & { kind: 'blockDriving' },
  person: string,
  { sketch, problem, raceMs }: { sketch: Sketch; problem: Problem; raceMs: number },
): boolean {
  const holeMs = problem.counting.stops ? 0 : problem.stop.standsMs
  for (let from = 0; from < raceMs; from += blockMs) {
    const to = Math.min(raceMs, from + blockMs)
    const ms = sketch.slots.reduce((sum, slot, at) => {
      if (sketch.drivers[at] !== person) return sum
      const end = slot.raceMs + slot.toMs - slot.fromMs
      const begin = slot.raceMs + (sketch.stops[at] ? holeMs : 0)
      return sum + Math.max(0, Math.min(end, to) - Math.max(begin, from))
    }, 0)
    if (ms > atMostMs || (to - from === blockMs && ms < atLeastMs)) return false
  }
  return true
}
