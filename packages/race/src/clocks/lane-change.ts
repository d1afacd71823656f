/** The lane change as one view: a screen shows it by itself from a segment's end to the next green. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { ruleValue, type RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { lanesOf, type SegmentLane } from '../time/lanes.ts'
import { segmentsOf, type SegmentPlace } from '../time/programme.ts'
import { handsOnCar, type HandsOnCar } from './hands-on-car.ts'
import { lightTest, type LightTest } from './lights.ts'
import { phaseOf } from './phase.ts'
import { movesOfChange, type MoveStep } from './lane-change-moves.ts'

export interface LaneChange {
  readonly kind: 'laneChange' | 'break'
  /** The segment that ended and the one that comes: `Lane change, 8 of 24` is `before.index + 1` of `before.of`. */
  readonly before: SegmentPlace
  readonly next: SegmentPlace
  /** Undefined where the race has no lanes. */
  readonly from?: SegmentLane
  readonly to?: SegmentLane
  /** When the segment before ended. */
  readonly since: number
  /** Who has the controller at the next green by the plan; absent in a sit-out and where the plan has nobody. */
  readonly driver?: string
  /** In the order in which people move: those made first, then those to come. Who stays where they are is left out. */
  readonly moves: readonly MoveStep[]
  /** Who has a post at the next green by the plan. */
  readonly posts: readonly { readonly person: string; readonly post?: string }[]
  readonly movedBy: 'us' | 'judges' | 'notKnown'
  readonly restartAt?: RestartAt | 'notKnown'
  readonly hands: HandsOnCar
  /** Absent where the rules name no earliest restart. */
  readonly earliest?: Countdown
  readonly planned: Countdown
  /** Ticked by `workTicked.1` with these words; none before a sit-out. */
  readonly work: readonly { readonly work: string; readonly done: boolean }[]
  /** Only before a dark segment. */
  readonly lights?: LightTest
  /** What the segment sat out obliges to; only before one. */
  readonly sitOut?: SitOut
}

export interface Countdown {
  readonly at: number
  readonly lengthMs: number
  /** Below 0 once it is past. */
  readonly toGoMs: number
}

export interface SitOut {
  readonly obliges: RuleValue<'sitOutDuty'>['obliges']
  readonly posts?: number
}

type RestartAt = Exclude<RuleValue<'restart'>['at'], 'notKnownYet'>

/** What is tried before every green. */
export const LANE_CHANGE_WORK = ['Controller plugged in', 'Power tested'] as const

/**
 * Undefined unless one segment is over and another is to come, and between them the programme has a lane change or
 * the race has lanes. The earliest restart counts from the segment's end; the planned one is when the programme has
 * the next green, and does not slide.
 */
export function laneChange(state: State, now: number): LaneChange | undefined {
  const phase = phaseOf(state, now)
  const since = state.raceControl.runs.at(-1)?.endAt
  const { segment: before, next } = phase
  if (phase.phase !== 'between' || since === undefined || !before || !next) return undefined
  const kind = phase.between ?? 'break'
  const lanes = lanesOf(state, now)
  const [from, to] = [lanes.get(before.item.id), lanes.get(next.item.id)]
  if (kind === 'break' && from === undefined && to === undefined) return undefined
  const rules = inForce(state, 'rules', now)?.rules ?? []
  const rule = ruleValue(rules, 'laneChange')
  const earliestMs = known(rule?.earliestMs)
  const restart = ruleValue(rules, 'restart')
  const lights = lightTest(state, now)
  return {
    ...{ kind, before, next, since, hands: handsOnCar(state, now) },
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...movesOfChange(state, { segment: next.item.id, since, now }),
    movedBy: known(rule?.movedBy) ?? 'notKnown',
    ...(restart ? { restartAt: known(restart.at) ?? 'notKnown' } : {}),
    ...(earliestMs === undefined ? {} : { earliest: countdown(since, since + earliestMs, now) }),
    planned: countdown(since, plannedAt(state, since, now), now),
    work: to === 'sitOut' ? [] : workOf(state, since),
    ...(lights ? { lights } : {}),
    ...(to === 'sitOut' ? sitOutOf(state, now) : {}),
  }
}

function countdown(since: number, at: number, now: number): Countdown {
  return { at, lengthMs: Math.max(0, at - since), toGoMs: at - now }
}

/** About when the next segment begins; once that is past, when it should have. */
function plannedAt(state: State, since: number, now: number): number {
  const startOf = (at: number) =>
    segmentsOf(state, at).find((one) => one.state === 'ahead')?.startsAt
  const about = startOf(now) ?? now
  return about > now ? about : Math.min(now, startOf(since) ?? now)
}

function workOf(state: State, since: number): LaneChange['work'] {
  return LANE_CHANGE_WORK.map((work) => {
    const tick = state.car.work.filter(({ at, body }) => at >= since && body.work === work).at(-1)
    return { work, done: tick?.body.done ?? false }
  })
}

function sitOutOf(state: State, now: number): Pick<LaneChange, 'sitOut'> {
  const rule = ruleValue(inForce(state, 'rules', now)?.rules ?? [], 'sitOutDuty')
  if (!rule) return {}
  const posts = known(rule.posts)
  return { sitOut: { obliges: rule.obliges, ...(posts === undefined ? {} : { posts }) } }
}
