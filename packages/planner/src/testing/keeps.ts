/** Whether a sketch keeps everything, and what it is worth: from the words of each rule. */
import type { Problem } from '../problem/problem.ts'
import type { Rule } from '../rules/index.ts'
import { keepsDriving } from './keeps-driving.ts'
import { lengthOf, shiftsOf, stintsOf, type Sketch } from './sketch.ts'

export function keepsAll(problem: Problem, sketch: Sketch): boolean {
  return isPossible(problem, sketch) && problem.rules.every((rule) => keeps(rule, sketch, problem))
}

/** Nobody in two places, everybody there, and a handover that can be done in order. */
function isPossible(problem: Problem, { slots, drivers, posts, anew, stops }: Sketch): boolean {
  const downFirst = problem.rules.some(
    (one) => one.kind === 'driverChange' && one.order === 'downFirst',
  )
  const relieved = !problem.rules.some((one) => one.kind === 'relief' && !one.before)
  return slots.every((slot, at) => {
    const [driver, post] = [drivers[at], posts[at]]
    for (const [id, duty] of [
      [driver, 'controller'],
      [post, 'post'],
    ] as const) {
      const person = problem.people.find((one) => one.id === id)
      if (id !== undefined && !person?.duties.includes(duty)) return false
      const there = person?.there ?? []
      const isThere = there.some(
        ({ fromAt = 0, toAt = Infinity }) => fromAt <= slot.fromAt && toAt >= slot.toAt,
      )
      if (there.length > 0 && !isThere) return false
    }
    if (driver !== undefined && driver === post && problem.joined.length === 0) return false
    const before = drivers[at - 1]
    if (anew[at] && (before !== driver || !slot.goesOn || !stops[at])) return false
    if (slot.begins === 'mayStop' && before !== driver && !stops[at]) return false
    const isSwap =
      post !== undefined && driver !== undefined && post === before && driver === posts[at - 1]
    return !(slot.begins === 'cut' && isSwap && relieved && !downFirst)
  })
}

function keeps(rule: Rule, sketch: Sketch, problem: Problem): boolean {
  const { slots, drivers, posts } = sketch
  const people = new Map(problem.people.map((one) => [one.id, one]))
  switch (rule.kind) {
    case 'dutyWanted':
      return slots.every(
        ({ segment }, at) =>
          posts[at] !== undefined || (rule.segments && !rule.segments.includes(segment.id)),
      )
    case 'mayNot':
      return slots.every(({ segment }, at) => {
        if (rule.segments && !rule.segments.includes(segment.id)) return true
        const id = rule.duty === 'controller' ? drivers[at] : posts[at]
        if (id === undefined || (rule.person !== undefined && rule.person !== id)) return true
        return rule.who !== undefined && !people.get(id)?.categories.includes(rule.who)
      })
    case 'marshalShift': {
      const shifts = shiftsOf(sketch)
      return shifts.every((one, place) => {
        const before = shifts
          .slice(0, place)
          .filter(({ person }) => person === one.person)
          .at(-1)
        const rested = !before || one.fromAt - before.toAt >= (rule.restMs ?? 0)
        return rested && one.toAt - one.fromAt <= (rule.atMostMs ?? Infinity)
      })
    }
    case 'relief':
      return true
    case 'restBlock':
      return problem.people
        .filter(({ categories }) => rule.who === undefined || categories.includes(rule.who))
        .every(({ id }) => hasRest(rule, id, sketch))
    case 'driverChange':
      return (
        rule.where === 'anywhere' ||
        slots.every((slot, at) => slot.begins !== 'cut' || drivers[at] === drivers[at - 1])
      )
    default:
      return keepsStops(rule, sketch, problem)
  }
}

/** Tried at every beginning: the window's, the race's, and the end of every slot. */
function hasRest(
  { atLeastMs, windows, marshallingIsRest }: Rule & { kind: 'restBlock' },
  person: string,
  { slots, drivers, posts }: Sketch,
): boolean {
  const [raceAt, overAt] = [slots[0]?.fromAt ?? 0, slots.at(-1)?.toAt ?? 0]
  const hasDuty = [...drivers, ...posts].includes(person)
  const busy = slots.filter(
    (_, at) => drivers[at] === person || (!marshallingIsRest && posts[at] === person),
  )
  return (
    !hasDuty ||
    (windows ?? [{ fromAt: raceAt, toAt: overAt }]).some(({ fromAt, toAt }) =>
      [fromAt, raceAt, ...slots.map((one) => one.toAt)].some((at) => {
        const end = at + atLeastMs
        const isIn = at >= Math.max(fromAt, raceAt) && end <= Math.min(toAt, overAt)
        return isIn && busy.every((one) => one.toAt <= at || one.fromAt >= end)
      }),
    )
  )
}

function keepsStops(rule: Rule, sketch: Sketch, problem: Problem): boolean {
  const { slots, drivers, stops, anew } = sketch
  const made = slots.filter((_, at) => stops[at])
  switch (rule.kind) {
    case 'changeAtStop':
      return slots.every((_, at) => !stops[at] || drivers[at] !== drivers[at - 1] || anew[at])
    case 'mandatoryStops':
      if (rule.per === 'race') return made.length >= rule.count
      return problem.segments.every(
        (segment) =>
          segment.lane === 'sitOut' ||
          made.filter((one) => one.segment === segment).length >= rule.count,
      )
    case 'stopWindows': {
      const isIn = (stop: (typeof made)[number], window: (typeof rule.windows)[number]) =>
        stop.segment.id === window.segment &&
        stop.fromMs >= window.fromMs &&
        stop.fromMs <= window.toMs
      const left = [...made]
      const served = rule.windows.every((window) => {
        const place = left.findIndex((stop) => isIn(stop, window))
        if (place >= 0) left.splice(place, 1)
        return place >= 0
      })
      return served && made.every((stop) => rule.windows.some((window) => isIn(stop, window)))
    }
    case 'closedPeriod':
      return made.every((stop) => {
        const raceMs = problem.segments.reduce((sum, { lengthMs }) => sum + lengthMs, 0)
        const since = rule.of === 'race' ? stop.raceMs : stop.fromMs
        const left = (rule.of === 'race' ? raceMs : stop.segment.lengthMs) - since
        return since >= (rule.firstMs ?? 0) && left >= (rule.lastMs ?? 0)
      })
    case 'stopRhythm': {
      const end = problem.segments.reduce((sum, { lengthMs }) => sum + lengthMs, 0)
      for (let due = rule.everyMs; due < end; due += rule.everyMs) {
        if (made.filter(({ raceMs }) => Math.abs(raceMs - due) <= rule.toleranceMs).length !== 1)
          return false
      }
      return true
    }
    case 'runningBetweenStops':
      return made.slice(1).every((stop, place) => {
        const ran = stop.raceMs - (made[place]?.raceMs ?? 0) - problem.stop.standsMs
        return ran >= rule.atLeastMs
      })
    case 'energy':
      return keepsEnergy(rule, made, problem)
    case 'stopTask':
      return (
        made.filter(({ segment }) => rule.segments?.includes(segment.id) ?? true).length >=
        rule.times
      )
    default:
      return keepsDriving(rule, sketch, problem)
  }
}

function keepsEnergy(
  { fullMs = Infinity, leftAtEnd = 0 }: Rule & { kind: 'energy' },
  made: Sketch['slots'],
  { segments }: Problem,
): boolean {
  const running = segments.filter(({ lane }) => lane !== 'sitOut')
  return running.every((segment) => {
    const at = made.filter((one) => one.segment === segment).map(({ fromMs }) => fromMs)
    const edges = [0, ...at, segment.lengthMs]
    const loads = edges.slice(1).map((end, place) => end - (edges[place] ?? 0))
    const last = segment === running.at(-1) ? (loads.at(-1) ?? 0) : 0
    return loads.every((one) => one <= fullMs) && last * 1_000 <= fullMs * (1_000 - leftAtEnd)
  })
}

/** Laps less what shares and comings to the post cost. */
export function worth(problem: Problem, sketch: Sketch): number {
  const { stop, balance, dutyChangeLaps } = problem
  const stints = stintsOf(sketch, problem)
  let laps = 0
  for (const { person, from, to, fromAt } of stints) {
    const pace = problem.people.find(({ id }) => id === person)?.pace
    if (!pace) continue
    laps -= pace.findingInLaps
    for (let at = from; at < to; at += 1) {
      const slot = sketch.slots[at]
      if (!slot) continue
      const lane =
        typeof slot.segment.lane === 'number' ? (pace.laneAddsMs?.[slot.segment.lane] ?? 0) : 0
      const hours = ((slot.fromAt + slot.toAt) / 2 - fromAt) / 3_600_000
      const slower = pace.slowerPerHourMs * hours
      const isWait = at > from && slot.begins === 'mayStop'
      const lostMs = sketch.stops[at] ? stop.costsMs : 0
      const runs = slot.toMs - slot.fromMs - (isWait ? 0 : lostMs)
      laps += runs / (pace.lapMs + lane + slower) - (isWait ? lostMs / (pace.lapMs + lane) : 0)
    }
  }
  const canDrive = problem.people.filter(
    ({ duties, pace }) => duties.includes('controller') && pace,
  )
  const runMs = problem.segments.reduce(
    (sum, one) => sum + (one.lane === 'sitOut' ? 0 : one.lengthMs),
    0,
  )
  const offMs = canDrive.map(({ id }) => {
    const total = stints.reduce(
      (sum, one) => sum + (one.person === id ? lengthOf(one.driven) : 0),
      0,
    )
    return Math.max(0, Math.abs(total - runMs / canDrive.length) - balance.toleranceMs)
  })
  const unfair = offMs.reduce((sum, one) => sum + one, 0) / 3_600_000
  return laps - unfair * balance.lapsPerHour - shiftsOf(sketch).length * dutyChangeLaps
}
