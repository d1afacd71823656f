/** What the last stop came to, in words: early or late against the minimum, and what that costs by the rules. */
import {
  counted,
  leavingNow,
  stopVerdict,
  type State,
  type StopCost,
  type StopMoment,
  type StopVerdict,
} from '@pitlamp/race'
import { figure } from './time.ts'

export interface StopVerdictShown {
  /** The stop, so that a new one is read aloud. */
  readonly stop: string
  readonly verdict: StopVerdict['verdict']
  readonly words: string
  /** What it costs, or that nothing does; absent where nothing was broken and nothing is to be said. */
  readonly cost?: string
}

const SECOND_MS = 1_000
/** It stands for this long after the car left: common practice, no source. */
const SHOWN_MS = 180_000

export const MOMENT_WORD = {
  pitEntry: 'pit entry',
  stopped: 'stopped',
  leaving: 'leaving',
  pitExit: 'pit exit',
} as const satisfies Record<StopMoment, string>

/** Of the last stop, while it is not older than three minutes; undefined while the car is in, and later. */
export function lastStopVerdict(state: State, now: number): StopVerdictShown | undefined {
  const stop = state.car.stops.at(-1)
  const outAt = stop?.moments.pitExit?.at ?? stop?.moments.leaving?.at
  if (!stop || outAt === undefined || now - outAt > SHOWN_MS) return undefined
  const verdict = stopVerdict(state, stop.entry)
  return verdict && { stop: stop.entry, verdict: verdict.verdict, ...wordsOf(verdict) }
}

function wordsOf(of: StopVerdict): Pick<StopVerdictShown, 'words' | 'cost'> {
  const { verdict, byMs = 0, missing } = of
  switch (verdict) {
    case 'cannotTell':
      return { words: `How long the stop was cannot be told: ${missingWords(missing)}.` }
    case 'noMinimum':
      return { words: `The stop took ${seconds(of.lastedMs ?? 0)}.` }
    case 'exact':
      return { words: `Left on the minimum, ${ofMinimum(of)}.` }
    case 'late':
      return {
        words: `Left ${seconds(byMs)} after the minimum, ${ofMinimum(of)}.`,
        cost: 'The rules ask nothing for that: it cost the time.',
      }
    case 'early':
      return {
        words: `Left ${seconds(-byMs)} early, ${ofMinimum(of)}.`,
        cost: costWords(of.costs),
      }
  }
}

function missingWords(missing: readonly StopMoment[]): string {
  const names = missing.map((moment) => MOMENT_WORD[moment])
  return `${names.join(' and ')} ${names.length > 1 ? 'were' : 'was'} not recorded`
}

function ofMinimum({ lastedMs = 0, minimumMs = 0, heldMs = 0, assumed }: StopVerdict): string {
  const held = heldMs > 0 ? `, ${seconds(heldMs)} of a track call not counted` : ''
  const taken = assumed ? ' (timed as taken, not known)' : ''
  return `${seconds(lastedMs)} of ${seconds(minimumMs)}${held}${taken}`
}

function costWords(costs: readonly StopCost[]): string {
  if (costs.length === 0) return 'What that costs is not in the rules: ask race control.'
  return `It costs ${allOf(costs)}.`
}

/** `12 s short: leaving now costs 24 s held (§ 9.2)`; undefined where it costs nothing that the rules name. */
export function leavingNowWords(state: State, now: number): string | undefined {
  const { shortMs, costs } = leavingNow(state, now) ?? { shortMs: 0, costs: [] }
  if (costs.length === 0) return undefined
  // A second begun counts whole, as on the countdown beside it.
  const short = seconds(Math.ceil(shortMs / SECOND_MS) * SECOND_MS)
  return `${short} short: leaving now costs ${allOf(costs)}`
}

function allOf(costs: readonly StopCost[]): string {
  return costs.map(costOf).join(', and ')
}

function costOf(cost: StopCost): string {
  const clause = cost.clause === undefined ? '' : ` (${cost.clause})`
  return `${whatItIs(cost)}${clause}`
}

function whatItIs({ is, total, amount, per }: StopCost): string {
  const many = total ?? amount
  const each = total === undefined && per !== 'occurrence' ? ` a ${PER[per]}` : ''
  switch (is) {
    case 'laps':
      return many === undefined ? 'laps, how many is not known' : `${counted(many, 'lap')}${each}`
    case 'seconds':
      return many === undefined ? 'time held, how long is not known' : `${many} s held${each}`
    case 'position':
      return many === undefined ? 'places' : `${counted(many, 'place')}${each}`
    default:
      return PLAIN_COST[is]
  }
}

const PER = { lap: 'lap', secondShort: 'second short' } as const
const PLAIN_COST = {
  warning: 'a warning',
  stopAndGo: 'a stop-and-go',
  driveThrough: 'a drive-through',
  segmentLost: 'the segment',
  exclusion: 'the race',
  notKnown: 'something that is not known yet',
} as const

/** `2.4 s`, and from a minute on `1:03`. */
function seconds(ms: number): string {
  return ms < 60_000 ? `${Math.round(ms / 100) / 10} s` : figure(ms)
}
