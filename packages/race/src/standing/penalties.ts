/** Penalties from given to served or withdrawn: what is still to be served by when, and what may be protested. */
import { paceNow } from '../clocks/pace.ts'
import { inForce } from '../fold/in-force.ts'
import type { PenaltyState, Said, State } from '../fold/state.ts'
import { rulesOf, type Rule, type RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { lapsNow, lappingMs } from '../time/lapping.ts'

export interface PenaltyNow {
  readonly penalty: PenaltyState
  /** `standing`: it counts, and nothing is to be done about it. */
  readonly status: 'standing' | 'toServe' | 'served' | 'withdrawn'
  readonly serve?: ToServe
  /** Where it is known until when it may be contested, unless it was withdrawn. */
  readonly protest?: Protest
  /** Notes about it, in the order of the log. */
  readonly notes: readonly Said<'note.1'>[]
}

export interface ToServe {
  readonly withinLaps?: number
  /** The laps as time at the pace entered for who drives; the three are absent while it or they are not known. */
  readonly lengthMs?: number
  readonly remainingMs?: number
  readonly dueAt?: number
  readonly running: boolean
  readonly estimated: true
  /** Of the rule that says within how many laps, where race control did not. */
  readonly clause?: string
}

export interface Protest {
  readonly until: number
  readonly lengthMs: number
  readonly over: boolean
  readonly clause?: string
}

type What = PenaltyState['body']['what']

/** Oldest first. */
export function penalties(state: State, now: number): readonly PenaltyNow[] {
  return state.raceControl.penalties.map((penalty) => {
    const status = statusOf(penalty)
    const protest = status === 'withdrawn' ? undefined : protestOf(state, penalty, now)
    return {
      penalty,
      status,
      ...(status === 'toServe' ? { serve: toServe(state, penalty, now) } : {}),
      ...(protest ? { protest } : {}),
      notes: state.record.notes.filter(({ body }) => body.about === penalty.entry),
    }
  })
}

const IN_THE_PITS: ReadonlySet<What> = new Set(['stopAndGo', 'driveThrough', 'secondsHeld'])

function statusOf({ body, servedAt, withdrawnAt }: PenaltyState): PenaltyNow['status'] {
  if (withdrawnAt !== undefined) return 'withdrawn'
  if (servedAt !== undefined) return 'served'
  return IN_THE_PITS.has(body.what) ? 'toServe' : 'standing'
}

/** Laps count while the car laps, from when the penalty was given. */
function toServe(state: State, { at, body }: PenaltyState, now: number): ToServe {
  const { withinLaps, clause } = lapsToServe(inForce(state, 'rules', at)?.rules ?? [], body)
  const paceMs = paceNow(state, now)
  const common = {
    ...(withinLaps === undefined ? {} : { withinLaps }),
    ...(clause === undefined ? {} : { clause }),
    ...{ running: lapsNow(state), estimated: true as const },
  }
  if (withinLaps === undefined || paceMs === undefined) return common
  const lengthMs = withinLaps * paceMs
  const remainingMs = lengthMs - lappingMs(state, { fromAt: at, toAt: now })
  return { ...common, lengthMs, remainingMs, dueAt: now + remainingMs }
}

/** Race control's word; else the rule for serving it; else the least that a rule for such a penalty says. */
function lapsToServe(
  rules: readonly Rule[],
  { what, serveWithinLaps }: PenaltyState['body'],
): Pick<ToServe, 'withinLaps' | 'clause'> {
  if (serveWithinLaps !== undefined) return { withinLaps: serveWithinLaps }
  const serving = rulesOf(rules, 'servePenalty').filter(({ value }) => value.penalty === what)
  const given = rulesOf(rules, 'penalty').filter(({ value }) => value.is === AS_RULES_SAY[what])
  const limits = (serving.length > 0 ? serving : given).flatMap(({ value, clause }) => {
    const withinLaps = known(value.withinLaps)
    return withinLaps === undefined ? [] : [{ withinLaps, clause }]
  })
  const [least] = limits.sort((a, b) => a.withinLaps - b.withinLaps)
  if (!least) return {}
  const { withinLaps, clause } = least
  return clause === undefined ? { withinLaps } : { withinLaps, clause }
}

/** Race control's word, or the shortest time that a rule for such a penalty leaves. */
function protestOf(state: State, { at, body }: PenaltyState, now: number): Protest | undefined {
  const { contestableUntil: until, what } = body
  if (until !== undefined) return { until, lengthMs: Math.max(0, until - at), over: now >= until }
  const rules = inForce(state, 'rules', at)?.rules ?? []
  const times = rulesOf(rules, 'penalty')
    .filter(({ value }) => value.is === AS_RULES_SAY[what])
    .flatMap(({ value, clause }) => {
      const lengthMs = known(value.contestableMs)
      return lengthMs === undefined ? [] : [{ lengthMs, clause }]
    })
  const [shortest] = times.sort((a, b) => a.lengthMs - b.lengthMs)
  if (!shortest) return undefined
  const { lengthMs, clause } = shortest
  const ends = { until: at + lengthMs, lengthMs, over: now >= at + lengthMs }
  return clause === undefined ? ends : { ...ends, clause }
}

/** What the rules call each penalty that race control gives. */
const AS_RULES_SAY: Readonly<Record<What, RuleValue<'penalty'>['is']>> = {
  warning: 'warning',
  laps: 'laps',
  secondsHeld: 'seconds',
  stopAndGo: 'stopAndGo',
  driveThrough: 'driveThrough',
  position: 'position',
  lossOfSegment: 'segmentLost',
  exclusion: 'exclusion',
}
