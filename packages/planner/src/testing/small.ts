/** Small problems from a seed, with a few rules of any kind mixed: small enough to try every rotation. */
import type { Person } from '../problem/person.ts'
import type { Problem } from '../problem/problem.ts'
import type { Segment } from '../problem/segment.ts'
import type { Rule } from '../rules/index.ts'
import { chanceOf, type Chance } from './chance.ts'
import { GREEN_AT, minutes, problem } from './make.ts'

const SHAPES = ['fixed', 'posts', 'chosen'] as const
type Shape = (typeof SHAPES)[number]

export function smallProblem(seed: number): Problem {
  const chance = chanceOf(seed)
  const { between } = chance
  const shape = SHAPES[between(0, 2)] ?? 'fixed'
  const segments = segmentsOf(shape, chance)
  const count = shape === 'posts' ? 3 : between(2, 3)
  const people = Array.from({ length: count }, (_, place) => personOf(place, chance, segments))
  const rules = Array.from({ length: between(1, 4) }, () => ruleOf(shape, chance, segments))
  const wanted: Rule = { id: 'post', kind: 'dutyWanted', duty: 'post', count: 1 }
  const standsMs = minutes(between(0, 2))
  return problem({
    ...{ segments, people },
    rules: [...(shape === 'posts' ? [wanted] : []), ...rules].map((rule, place) => ({
      ...rule,
      id: `${place} ${rule.kind}`,
    })),
    stop: { standsMs, costsMs: standsMs + minutes(between(0, 1)) },
    counting: {
      stops: shape === 'chosen' || between(0, 2) > 0,
      laneChanges: between(0, 1) === 1,
      changeWithOneself: shape !== 'posts' && between(0, 3) === 0,
    },
    balance: { toleranceMs: minutes(5 * between(0, 3)), lapsPerHour: 10 * between(0, 3) },
    dutyChangeLaps: between(0, 2) / 4,
  })
}

function segmentsOf(shape: Shape, { between }: Chance): readonly Segment[] {
  const counts =
    shape === 'chosen' ? [5] : shape === 'posts' ? [2, 2] : [between(2, 3), between(2, 3)]
  let startsAt = GREEN_AT
  return counts.map((slots, place) => {
    const eachMs = minutes(5 * between(2, 5))
    const lengthMs = slots * eachMs
    const edges = Array.from({ length: slots - 1 }, (_, edge) => (edge + 1) * eachMs)
    const isCut = edges.map(() => between(0, 3) === 0)
    const after = place === 0 ? 'start' : between(0, 2) > 0 ? 'laneChange' : 'break'
    const isSitOut = shape === 'posts' && place === 1 && between(0, 3) === 0
    const segment: Segment = {
      ...{ id: `segment-${place}`, after, startsAt, lengthMs },
      lane: isSitOut ? 'sitOut' : place + 1,
      stops: edges.flatMap((atMs, edge) =>
        shape === 'chosen' || isCut[edge]
          ? []
          : [{ id: `${place}-${edge}`, atMs, mandatory: true }],
      ),
      ...(shape === 'chosen'
        ? { gridMs: eachMs }
        : { cutsMs: edges.filter((_, edge) => isCut[edge]) }),
    }
    startsAt += lengthMs + minutes(5 * between(1, 4))
    return segment
  })
}

function personOf(place: number, { between }: Chance, segments: readonly Segment[]): Person {
  const last = segments.at(-1)
  const endAt = (last?.startsAt ?? 0) + (last?.lengthMs ?? 0)
  const leaves =
    place > 0 && between(0, 5) === 0
      ? { there: [{ toAt: endAt - minutes(5 * between(1, 6)) }] }
      : {}
  return {
    id: `person-${place}`,
    duties: ['controller', 'post', 'wall', 'bench'],
    categories: [place === 0 ? 'novice' : place === 1 || between(0, 1) ? 'old hand' : 'novice'],
    pace: {
      lapMs: between(9_000, 11_000),
      knownToMs: 100,
      slowerPerHourMs: between(0, 2_000),
      findingInLaps: between(0, 8) / 4,
      laneAddsMs: { 1: between(0, 500), 2: between(0, 500) },
    },
    ...leaves,
  }
}

function ruleOf(shape: Shape, chance: Chance, segments: readonly Segment[]): Rule {
  const kinds = [...DRIVING, ...(shape === 'posts' ? POSTS : shape === 'chosen' ? STOPS : FIXED)]
  return (kinds[chance.between(0, kinds.length - 1)] ?? DRIVING[0])(chance, segments)
}

type Make = (chance: Chance, segments: readonly Segment[]) => Rule

const id = ''
const DRIVING: readonly [Make, ...Make[]] = [
  ({ between }) => ({ id, kind: 'drivingTime', atMostMs: minutes(5 * between(6, 14)) }),
  ({ between }) => ({ id, kind: 'drivingTime', atLeastMs: minutes(5 * between(2, 8)) }),
  ({ between }) => ({ id, kind: 'drivingShare', atMost: between(40, 70) * 10, who: 'novice' }),
  ({ between }) => ({ id, kind: 'drivingSegments', atMost: between(1, 2) }),
  ({ between }) => ({ id, kind: 'drivingSpread', atMostMs: minutes(5 * between(1, 8)) }),
  ({ between }) => ({ id, kind: 'equalShare', of: 'time', tolerance: between(50, 400) }),
  ({ between }) => ({
    id,
    kind: 'equalShare',
    of: 'time',
    toleranceMs: minutes(5 * between(1, 4)),
  }),
  ({ between }) => ({
    ...{ id, kind: 'equalShare', of: 'segments' },
    tolerance: 250 * between(0, 2),
  }),
  ({ between }) => ({ id, kind: 'continuousDriving', atMostMs: minutes(5 * between(4, 12)) }),
  ({ between }) => ({ id, kind: 'continuousDriving', atLeastMs: minutes(5 * between(2, 6)) }),
  ({ between }) => ({ id, kind: 'stintsEach', atLeast: between(1, 2), atMost: between(2, 3) }),
  ({ between }) => ({ id, kind: 'numberOfDrivers', atLeast: between(2, 3) }),
  ({ between }) => ({ id, kind: 'numberOfDrivers', atMost: between(1, 2) }),
  ({ between }) => ({ id, kind: 'numberOfChanges', of: 'changes', atLeast: between(1, 4) }),
  ({ between }) => ({ id, kind: 'numberOfChanges', of: 'stints', atMost: between(2, 4) }),
  ({ between }) => ({ id, kind: 'stintsInARow', atMost: between(1, 2) }),
  ({ between }) => ({
    id,
    kind: 'followingDrivers',
    first: 'novice',
    must: between(0, 1) === 1,
    then: 'old hand',
  }),
  ({ between }) => ({
    id,
    kind: 'followingDrivers',
    first: 'novice',
    must: false,
    then: between(0, 1) ? 'novice' : 'old hand',
  }),
  ({ between }) => ({
    id,
    kind: 'endDriver',
    which: between(0, 1) ? 'first' : 'last',
    who: 'novice',
    must: between(0, 1) === 1,
  }),
  ({ between }) => ({
    id,
    kind: 'rollingDriving',
    atMostMs: minutes(5 * between(4, 9)),
    withinMs: minutes(5 * between(10, 16)),
  }),
  ({ between }) => ({
    id,
    kind: 'blockDriving',
    blockMs: minutes(5 * between(6, 10)),
    atMostMs: minutes(5 * between(4, 6)),
  }),
  ({ between }) => ({
    id,
    kind: 'driverRest',
    atLeastMs: minutes(5 * between(1, 6)),
    marshallingIsRest: between(0, 1) === 1,
  }),
  ({ between }) => ({
    id,
    kind: 'driverRest',
    shareOfStint: between(2, 10) * 100,
    marshallingIsRest: between(0, 1) === 1,
  }),
  ({ between }) => ({
    id,
    kind: 'mayNot',
    who: 'novice',
    duty: 'controller',
    segments: [`segment-${between(0, 0)}`],
  }),
  ({ between }) => ({
    ...{ id, kind: 'restBlock', atLeastMs: minutes(5 * between(3, 10)) },
    marshallingIsRest: between(0, 1) === 1,
  }),
  ({ between }, [one]) => {
    const fromAt = (one?.startsAt ?? 0) + minutes(5 * between(0, 4))
    const windows = [{ fromAt, toAt: fromAt + minutes(5 * between(4, 16)) }]
    return {
      ...{ id, kind: 'restBlock', atLeastMs: minutes(5 * between(2, 8)), windows },
      marshallingIsRest: between(0, 1) === 1,
    }
  },
]

const POSTS: readonly Make[] = [
  ({ between }) => ({ id, kind: 'marshalShift', atMostMs: minutes(5 * between(4, 10)) }),
  ({ between }) => ({
    id,
    kind: 'marshalShift',
    atMostMs: minutes(5 * between(5, 10)),
    restMs: minutes(5 * between(1, 5)),
  }),
  ({ between }) => ({ id, kind: 'marshalShift', restMs: minutes(5 * between(1, 6)) }),
  () => ({ id, kind: 'mayNot', person: 'person-0', duty: 'post' }),
  ({ between }) => ({
    id,
    kind: 'driverChange',
    where: 'anywhere',
    order: between(0, 1) ? 'downFirst' : 'anyOrder',
  }),
  ({ between }) => ({ id, kind: 'relief', before: between(0, 1) === 1 }),
]

const FIXED: readonly Make[] = [
  () => ({ id, kind: 'changeAtStop' }),
  () => ({ id, kind: 'driverChange', where: 'stoppedInPitLane', order: 'downFirst' }),
]

const STOPS: readonly Make[] = [
  () => ({ id, kind: 'changeAtStop' }),
  ({ between }) => ({
    id,
    kind: 'mandatoryStops',
    count: between(1, 4),
    per: between(0, 1) ? 'race' : 'segment',
  }),
  ({ between }, [one]) => {
    const middle = Math.floor((one?.lengthMs ?? 0) / 2)
    const first = { segment: 'segment-0', fromMs: minutes(between(5, 15)), toMs: middle }
    const second = {
      segment: 'segment-0',
      fromMs: middle - minutes(5),
      toMs: middle + minutes(between(10, 20)),
    }
    return { id, kind: 'stopWindows', windows: between(0, 1) ? [first, second] : [second] }
  },
  ({ between }) => ({
    id,
    kind: 'closedPeriod',
    of: 'race',
    firstMs: minutes(between(0, 25)),
    lastMs: minutes(between(0, 25)),
  }),
  ({ between }) => ({
    id,
    kind: 'stopRhythm',
    everyMs: minutes(5 * between(4, 8)),
    toleranceMs: minutes(5 * between(1, 3)),
  }),
  ({ between }) => ({ id, kind: 'runningBetweenStops', atLeastMs: minutes(5 * between(2, 8)) }),
  ({ between }) => ({
    id,
    kind: 'energy',
    fullMs: minutes(5 * between(5, 12)),
    leftAtEnd: between(0, 3) * 100,
  }),
  ({ between }) => ({ id, kind: 'stopTask', task: 'motor', times: between(1, 3) }),
]
