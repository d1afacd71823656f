/** Which lane each segment has: as it was drawn, as it follows from where we began, or as the programme has it. */
import type { Regulations, SegmentItem } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { RaceControlState, SegmentRun, State } from '../fold/state.ts'
import { ruleValue, type Rule } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { lanesPerTrack, roundOf, type RoundPlace } from './lane-order.ts'

export interface Lane {
  /** Its number on its track. */
  readonly lane: number
  /** Where there are several. */
  readonly track?: number
  /** What the hall calls its colour. */
  readonly colour?: string
}
export type SegmentLane = Lane | 'sitOut' | 'notDrawnYet'

export interface Drawn {
  readonly starts: RaceControlState['starts']
  /** What was drawn for one segment since; null is a sit-out. */
  readonly laneOf: (segment: string) => number | null | undefined
}

/** By the rules in force at `at`. Segments without lanes, as on a digital track, are left out. */
export function lanesOf(state: State, at: number): ReadonlyMap<string, SegmentLane> {
  const { raceControl } = state
  const regulations = inForce(state, 'rules', at)
  const before = reckoned.get(raceControl)
  if (before && before.regulations === regulations) return before.lanes
  const { starts, lanes: drawn } = raceControl
  const laneOf = (segment: string) => (Object.hasOwn(drawn, segment) ? drawn[segment] : undefined)
  const lanes = lanesIn(regulations, { starts, laneOf })
  reckoned.set(raceControl, { regulations, lanes })
  return lanes
}

interface Reckoned {
  readonly regulations: Regulations | undefined
  readonly lanes: ReadonlyMap<string, SegmentLane>
}

/** Nearly every clock asks, several times a second, of a state that does not change: reckoned once for each. */
const reckoned = new WeakMap<RaceControlState, Reckoned>()

/**
 * Of starts the last one said that is not after a segment speaks for it. From it each segment is one place further
 * in the round. Where neither the round nor groups say when we sit out, the segments that the programme has as
 * sit-outs do, and we stay where we are in the round meanwhile. Segments after a start whose order is not known
 * are not drawn yet.
 */
export function lanesIn(
  regulations: Regulations | undefined,
  drawn: Drawn,
): ReadonlyMap<string, SegmentLane> {
  const lanes = new Map<string, SegmentLane>()
  if (!regulations) return lanes
  const { programme, rules } = regulations
  const segments = programme.filter((item) => item.kind === 'segment')
  const round = roundOf(rules)
  segments.forEach((item, index) => {
    const place =
      said(drawn.laneOf(item.id)) ??
      placeFrom(drawn, { segments, index, round, rules }) ??
      item.lane
    if (place !== undefined) lanes.set(item.id, inHall(place, rules))
  })
  return lanes
}

/** Runs in which our car had no lane. */
export function satOut(state: State, at: number): (run: SegmentRun) => boolean {
  const lanes = lanesOf(state, at)
  return ({ segment }) => lanes.get(segment) === 'sitOut'
}

function said(lane: number | null | undefined): RoundPlace | undefined {
  return lane === null ? 'sitOut' : lane
}

interface Asked {
  readonly segments: readonly SegmentItem[]
  readonly index: number
  readonly round: readonly RoundPlace[] | undefined
  readonly rules: readonly Rule[]
}

function placeFrom({ starts }: Drawn, asked: Asked): RoundPlace | 'notDrawnYet' | undefined {
  const { segments, index } = asked
  const fromOf = (segment: string | undefined) =>
    segment === undefined ? 0 : segments.findIndex(({ id }) => id === segment)
  const start = starts
    .map(({ body }) => ({ body, from: fromOf(body.segment) }))
    .filter(({ from }) => from >= 0 && from <= index)
    .at(-1)
  if (!start) return undefined
  const { body, from } = start
  const steps = stepsTo(asked, from, body.group)
  if (steps === 'sitOut' || steps === 'notDrawnYet') return steps
  const begins = said(body.lane) ?? 'sitOut'
  const round = asked.round ?? []
  const first = placeInRound(round, begins, body.sitOut ?? 1)
  if (first < 0) return steps === 0 ? begins : 'notDrawnYet'
  return round[(first + steps) % round.length]
}

/** How many places further than where we began. */
function stepsTo(asked: Asked, from: number, group: number | undefined) {
  const { segments, index, round = [], rules } = asked
  const groups = groupsOf(rules)
  if (groups > 1) {
    if (group === undefined || group < 1 || group > groups) return 'notDrawnYet'
    const since = index - from - (group - 1)
    return since < 0 || since % groups !== 0 ? 'sitOut' : since / groups
  }
  if (round.includes('sitOut')) return index - from
  if (segments[index]?.lane === 'sitOut') return 'sitOut'
  return segments.slice(from, index).filter(({ lane }) => lane !== 'sitOut').length
}

function groupsOf(rules: readonly Rule[]): number {
  const order = ruleValue(rules, 'laneOrder')
  return order && known(order.moves) === 'groups' ? (known(order.groups) ?? 1) : 1
}

function placeInRound(round: readonly RoundPlace[], begins: RoundPlace, which: number): number {
  if (begins !== 'sitOut') return round.indexOf(begins)
  const sitOuts = round.flatMap((place, index) => (place === 'sitOut' ? [index] : []))
  return sitOuts[which - 1] ?? -1
}

function inHall(place: RoundPlace | 'notDrawnYet', rules: readonly Rule[]): SegmentLane {
  if (typeof place !== 'number') return place
  const rule = ruleValue(rules, 'tracks')
  const colour = known(rule?.colours)?.[place - 1]
  const perTrack = lanesPerTrack(rules)
  const several = (known(rule?.tracks) ?? 1) > 1 && perTrack !== undefined && place > 0
  const where = several
    ? { lane: ((place - 1) % perTrack) + 1, track: Math.floor((place - 1) / perTrack) + 1 }
    : { lane: place }
  return colour === undefined ? where : { ...where, colour }
}
