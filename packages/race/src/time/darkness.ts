/** Whether the hall is dark in a segment, by its name or by the clock. */
import type { Stretch } from '../checks/stretches.ts'
import type { Regulations } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { ruleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { hoursOfClock } from './hours-of-clock.ts'
import type { SegmentOutlook } from './programme.ts'

export interface Darkness {
  /** `notKnown`: the rules speak of darkness, and not yet of when, or not of when midnight is. */
  readonly is: 'dark' | 'partly' | 'light' | 'notKnown'
  /** In meeting time, about while the segment is ahead; without an end where the segment's is not known. */
  readonly spans: readonly { readonly fromAt: number; readonly toAt?: number }[]
}

type Segment = Pick<SegmentOutlook, 'item' | 'startsAt' | 'endsAt'>

const LIGHT: Darkness = { is: 'light', spans: [] }
const NOT_KNOWN: Darkness = { is: 'notKnown', spans: [] }

/** By the rules in force at `now`. */
export function darknessOf(state: State, segment: Segment, now: number): Darkness {
  const regulations = inForce(state, 'rules', now)
  const { item, startsAt, endsAt } = segment
  if (!regulations) return LIGHT
  const rule = ruleValue(regulations.rules, 'darkSegments')
  if (known(rule?.segments)?.includes(item.id)) {
    return { is: 'dark', spans: [{ fromAt: startsAt, toAt: endsAt }] }
  }
  const byClock = byHours(regulations, { fromAt: startsAt, toAt: endsAt ?? startsAt })
  if (byClock.is !== 'light' || !rule) return byClock
  return known(rule.segments) === undefined ? NOT_KNOWN : LIGHT
}

function byHours({ rules, midnightAt }: Regulations, within: Stretch): Darkness {
  const hours = ruleValue(rules, 'darkHours')
  if (!hours) return LIGHT
  const [fromMs, toMs] = [known(hours.from), known(hours.to)]
  if (fromMs === undefined || toMs === undefined || midnightAt === undefined) return NOT_KNOWN
  const spans = hoursOfClock({ midnightAt, fromMs, toMs }, within)
  if (spans.length === 0) return LIGHT
  const whole = spans.some(({ fromAt, toAt }) => fromAt <= within.fromAt && toAt >= within.toAt)
  return { is: whole ? 'dark' : 'partly', spans }
}
