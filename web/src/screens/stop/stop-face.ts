/** The large part of the Stop screen: what counts, what it says, whether the car may go. */
import {
  countedMoments,
  inForce,
  NOT_KNOWN_YET,
  phaseOf,
  policyFor,
  ruleValue,
  type State,
  type StopClock,
} from '@pitlamp/race'
import type { ClockShown } from '../../meeting/port.ts'
import { steady } from '../../parts/steady.ts'
import { leavingNowWords, MOMENT_WORD } from '../../parts/stop-verdict.ts'
import { clockTime, countdown, figure } from '../../parts/time.ts'
import { urgencyOf, type Urgency } from '../../parts/urgency.ts'

const SECOND_MS = 1_000

export interface StopFace {
  readonly counts: 'down' | 'up' | 'go' | 'nothingYet'
  readonly big: string
  readonly label: string
  readonly under: readonly string[]
  readonly left?: number
  readonly urgency: Urgency
  readonly held: boolean
}

export interface StopSeen {
  readonly state: State
  readonly now: number
  readonly timeZone: string
  readonly clock: ClockShown
}

/**
 * GO comes once the minimum and the captain's margin are over, and only where this screen's clock is set;
 * otherwise it names the two instants between which it lies, and goes on counting.
 */
export function stopFace(stop: StopClock, seen: StopSeen): StopFace {
  if (stop.minimumMs === undefined || stop.remainingMs === undefined)
    return withoutMinimum(stop, seen)
  if (stop.countedFrom === undefined) return notCountedYet(stop, stop.minimumMs, seen)
  const { remainingMs, minimumMs, goAt } = stop
  const sure = seen.clock.standing === 'set'
  if (sure && goAt !== undefined && seen.now >= goAt) return go(stop, seen.now - goAt)
  return {
    counts: 'down',
    big: steady(countdown(remainingMs), countdown(minimumMs)),
    label: `${nameOf(stop)}, ${fromTo(stop, seen)}. ${remainingMs > 0 ? 'Not before' : 'Wait for GO'}`,
    under: [
      ...againWords(stop, seen),
      sure ? marginWords(stop) : betweenWords(stop, seen),
      ...heldWords(stop, seen),
      ...leavingWords(seen),
    ],
    left: minimumMs > 0 ? remainingMs / minimumMs : 0,
    urgency: urgencyOf('stopGo', remainingMs),
    held: !stop.running,
  }
}

function go(stop: StopClock, overMs: number): StopFace {
  return {
    counts: 'go',
    big: 'GO',
    label: `${nameOf(stop)}: the minimum is over`,
    under: [
      overMs < 1_000 ? 'The car may leave.' : `The car could have left ${figure(overMs)} ago.`,
    ],
    left: 0,
    urgency: 'now',
    held: false,
  }
}

function notCountedYet(stop: StopClock, minimumMs: number, seen: StopSeen): StopFace {
  return {
    counts: 'nothingYet',
    big: countdown(minimumMs),
    label: `${nameOf(stop)}, ${fromTo(stop, seen)}`,
    under: [`It counts from ${MOMENT_WORD[stop.from ?? 'stopped']}: press it then.`],
    left: 1,
    urgency: 'soon',
    held: false,
  }
}

function withoutMinimum(stop: StopClock, seen: StopSeen): StopFace {
  const rules = inForce(seen.state, 'rules', seen.now)?.rules ?? []
  const asked = ruleValue(rules, 'stopMinimum')?.minimumMs === NOT_KNOWN_YET
  const why = asked
    ? 'How long a stop must last is not known yet: ask race control.'
    : 'The rules name no minimum for this stop.'
  return {
    counts: 'up',
    big: figure(stop.elapsedMs),
    label: `${nameOf(stop)}, standing for`,
    under: [why],
    urgency: 'calm',
    held: !stop.running,
  }
}

function nameOf({ mandatory, ordinal }: StopClock): string {
  return mandatory ? `Mandatory stop ${ordinal}` : `Stop ${ordinal}`
}

function fromTo({ from = 'stopped', to = 'leaving' }: StopClock, { state, now }: StopSeen): string {
  const words = `timed from ${MOMENT_WORD[from]} to ${MOMENT_WORD[to]}`
  return countedMoments(state, now).assumed ? `${words} (taken so, not known)` : words
}

function marginWords({ goMarginMs }: StopClock): string {
  return `GO comes ${Math.round(goMarginMs / 100) / 10} s after the minimum`
}

function betweenWords({ goAt }: StopClock, { clock, timeZone }: StopSeen): string {
  if (goAt === undefined) return 'No GO: this screen’s clock is not set'
  const seconds = (at: number) => clockTime(at, timeZone, { seconds: true })
  const from = seconds(goAt - clock.boundMs)
  // A second begun counts whole: the two never read the same.
  const to = seconds(Math.ceil((goAt + clock.boundMs) / SECOND_MS) * SECOND_MS)
  return `GO between ${from} and ${to}: this screen’s clock is not set`
}

function heldWords({ running }: StopClock, { state, now }: StopSeen): readonly string[] {
  if (running) return []
  const cause = phaseOf(state, now).cause ?? 'trackCall'
  const { does, assumed } = policyFor(inForce(state, 'rules', now), 'stopMinimum', cause)
  const why = assumed ? ' (taken so: the rule is not known)' : ''
  return does === 'startsAgain'
    ? [`The minimum starts again when power is on${why}`]
    : [`The minimum stands until power is on${why}`]
}

/** Last, so that what counts and when GO comes keep their places. */
function leavingWords({ state, now }: StopSeen): readonly string[] {
  const words = leavingNowWords(state, now)
  return words === undefined ? [] : [words]
}

function againWords({ startedAgainAt }: StopClock, { timeZone }: StopSeen): readonly string[] {
  if (startedAgainAt === undefined) return []
  return [`Started again at ${clockTime(startedAgainAt, timeZone, { seconds: true })}`]
}
