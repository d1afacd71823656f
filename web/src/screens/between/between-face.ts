/** What stands between two segments, in words: until when, hands, allowances, what was measured, who is next. */
import {
  counted,
  inForce,
  known,
  ruleValue,
  segmentsOf,
  type AllowanceNow,
  type Between,
  type Said,
  type State,
} from '@pitlamp/race'
import { milliText } from '../../parts/pad-number.ts'
import type { CountdownShown } from '../../parts/shown.ts'
import { clockTime, countdown, figure } from '../../parts/time.ts'
import { urgencyOf } from '../../parts/urgency.ts'

export const BETWEEN_WORD = {
  laneChange: 'Lane change',
  break: 'Break',
  parcFerme: 'Parc fermé',
} as const satisfies Record<Between['kind'], string>

export interface BetweenSeen {
  readonly state: State
  readonly now: number
  readonly timeZone: string
}

export interface Wait extends CountdownShown {
  readonly id: 'earliest' | 'planned'
}

/** The earliest green the rules allow, then the planned one; where neither is known nothing counts. */
export function waits(between: Between, seen: BetweenSeen): readonly Wait[] {
  const { since } = between
  const earliestMs = between.kind === 'laneChange' ? earliestAfterMs(seen) : undefined
  const plannedAt = plannedGreen(between, seen)
  return [
    ...(earliestMs === undefined
      ? []
      : [wait('earliest', { since, dueAt: since + earliestMs }, seen)]),
    ...(plannedAt === undefined ? [] : [wait('planned', { since, dueAt: plannedAt }, seen)]),
  ]
}

const LABEL = { earliest: 'Earliest green', planned: 'Planned green' } as const

function wait(
  id: Wait['id'],
  { since, dueAt }: { readonly since: number; readonly dueAt: number },
  { now, timeZone }: BetweenSeen,
): Wait {
  const leftMs = dueAt - now
  const label = `${LABEL[id]} about ${clockTime(dueAt, timeZone)}`
  const urgency = urgencyOf('segmentEnd', leftMs)
  const common = { id, urgency, held: false, lit: false }
  return leftMs > 0
    ? { ...common, label, figure: countdown(leftMs), left: leftMs / Math.max(1, dueAt - since) }
    : { ...common, label: `${label}, over by`, figure: figure(leftMs), left: 0 }
}

function earliestAfterMs({ state, now }: BetweenSeen): number | undefined {
  return known(ruleValue(inForce(state, 'rules', now)?.rules ?? [], 'laneChange')?.earliestMs)
}

/**
 * When the next segment is to begin, reckoned from the end of the last one, so that it stays where it was once it is
 * over. A segment that is to begin at once has no time of its own: that is no plan.
 */
function plannedGreen({ since }: Between, { state }: BetweenSeen): number | undefined {
  const next = segmentsOf(state, since).find((one) => one.state === 'ahead')
  return next !== undefined && next.startsAt > since ? next.startsAt : undefined
}

const OF_WORD = {
  tyreSets: ['Tyre sets', 'tyre set'],
  motors: ['Motors', 'motor'],
  bodies: ['Bodies', 'body'],
  chassis: ['Chassis', 'chassis'],
  cars: ['Cars', 'car'],
} as const satisfies Record<AllowanceNow['of'], readonly [string, string]>

export interface AllowanceShown {
  readonly rule: string
  readonly what: string
  readonly used: string
  readonly next: string
}

export function allowanceShown(one: AllowanceNow): AllowanceShown {
  const [what, single] = OF_WORD[one.of]
  const used =
    one.count === undefined
      ? `${one.used} used, how many are allowed is not known`
      : `${one.used} of ${one.count} used${one.beyond > 0 ? `, ${one.beyond} beyond` : ''}`
  const only = one.onlyOnFailure === true ? ', only when one fails' : ''
  return { rule: one.rule, what, used, next: `${nextWords(one.nextCosts, single)}${only}` }
}

function nextWords(costs: AllowanceNow['nextCosts'], single: string): string {
  if (costs === 'notAllowed') return `another ${single} is not allowed`
  if (costs === 'notKnown') return `what another ${single} costs is not known`
  if (costs.laps === 0) return `the next ${single} costs nothing`
  return `the next ${single} costs ${counted(costs.laps, 'lap')}`
}

export interface MeasuredShown {
  readonly entry: string
  readonly quantity: string
  readonly value: string
  readonly time: string
}

export function measuredShown(
  { entry, at, body }: Said<'measured.1'>,
  timeZone: string,
): MeasuredShown {
  const value = `${milliText(body.valueMilli)} ${body.unit}`
  return { entry, quantity: body.quantity, value, time: clockTime(at, timeZone) }
}
