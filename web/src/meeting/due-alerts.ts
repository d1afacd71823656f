/** Which alerts are new at a moment, and which of those on show have had their time. Pure. */
import {
  alertsBetween,
  callsNow,
  type Obligation,
  type ObligationKind,
  type State,
} from '@pitlamp/race'
import type { AlertShown } from './port.ts'

/** Whose alerts: the wall hears all, a phone its holder's own duty, a marshal only the relief. */
export type Hearing = 'all' | 'own' | 'relief' | 'none'

export interface Moment {
  readonly state: State
  readonly now: number
  readonly rate: number
  readonly person: string | undefined
  readonly obligations: readonly Obligation[]
}

export interface Due extends AlertShown {
  readonly kind: ObligationKind | 'call'
  /** When it was to be given. */
  readonly momentAt: number
  /** A newer alert about the same takes its place. */
  readonly about: string
}

/** Later than this nobody is startled any more: shown, not sounded. */
const LATE_REAL_MS = 30_000
/** Far enough back that a screen just opened shows what it is called to. Common practice, no source. */
const LOOK_BACK_REAL_MS = 120_000
const SHOWN_REAL_MS = 20_000

interface Asking {
  readonly hearing: Hearing
  /** Looked at so far; undefined on a screen just opened. */
  readonly checkedTo: number | undefined
  readonly heard: (alert: string) => boolean
}

export function newAlerts(moment: Moment, { hearing, checkedTo, heard }: Asking): readonly Due[] {
  const { now, rate, obligations } = moment
  const from = (checkedTo ?? now - LOOK_BACK_REAL_MS * rate) - LATE_REAL_MS * rate
  const ours = obligations.filter((obligation) => concerns(obligation, moment.person, hearing))
  const due = alertsBetween(ours, from, now).map(({ id, obligation, thresholdMs }) => ({
    id,
    kind: obligation.kind,
    about: obligation.id,
    label: obligation.label,
    thresholdMs,
    dueAt: obligation.dueAt,
    momentAt: obligation.dueAt - thresholdMs,
    concerns: obligation.concerns,
  }))
  return [...latestOfEach(due), ...callsTo(moment)]
    .filter(({ id }) => !heard(id))
    .map((alert) => ({ ...alert, sounded: now - alert.momentAt <= LATE_REAL_MS * rate }))
}

/** Of several that come at once: what costs most when it is missed first. Common practice, no source. */
const RANK: Readonly<Record<Due['kind'], number>> = {
  call: 0,
  stopGo: 1,
  stopWindowCloses: 2,
  repairLimit: 3,
  servePenalty: 4,
  energyEmpty: 5,
  segmentEnd: 6,
  plannedStop: 7,
  stopWindowOpens: 8,
  stintEnd: 9,
  lightTest: 10,
  callDue: 11,
  callUnanswered: 12,
  relief: 13,
  protestEnds: 14,
  readTheClock: 15,
  nextDuty: 16,
}

export function weightiestFirst(alerts: readonly Due[]): readonly Due[] {
  return [...alerts].sort((a, b) => a.dueAt - b.dueAt || RANK[a.kind] - RANK[b.kind])
}

/** A warning is shown for a while; what is due, or came too late, until it is dealt with or put away. */
export function stillShown(alerts: readonly Due[], moment: Moment): readonly Due[] {
  const { state, now, rate, obligations } = moment
  const open = new Map(obligations.map(({ id, dueAt }) => [id, dueAt]))
  const unanswered = new Set(
    state.people.calls.flatMap((call) => (call.answer ? [] : [idOf(call)])),
  )
  return latestOfEach(alerts).flatMap((alert) => {
    if (alert.thresholdMs === undefined) return unanswered.has(alert.about) ? [alert] : []
    const dueAt = open.get(alert.about)
    const stays = alert.thresholdMs === 0 || !alert.sounded
    const young = now - alert.momentAt <= SHOWN_REAL_MS * rate
    if (dueAt === undefined || !(stays || young)) return []
    return [dueAt === alert.dueAt ? alert : { ...alert, dueAt }]
  })
}

function concerns(
  { kind, concerns }: Obligation,
  person: string | undefined,
  hearing: Hearing,
): boolean {
  if (hearing === 'all') return true
  const own = person !== undefined && concerns.includes(person)
  return own && (hearing === 'own' || (hearing === 'relief' && kind === 'relief'))
}

/**
 * A call is heard by whom it is for and by whom it has passed on to, whatever screen they look at; each time it
 * is repeated it sounds anew.
 */
function callsTo({ state, person, now, rate }: Moment): Omit<Due, 'sounded'>[] {
  return callsNow(state, now)
    .filter(
      ({ call, state: stands, to, dueAt }) =>
        stands !== 'ahead' &&
        (call.body.person === person || to === person) &&
        now - dueAt <= LOOK_BACK_REAL_MS * rate,
    )
    .map(({ call, dueAt, repetition }) => ({
      id: repetition === 0 ? idOf(call) : `${idOf(call)}:${repetition}`,
      kind: 'call' as const,
      about: idOf(call),
      label: call.body.words,
      thresholdMs: undefined,
      dueAt,
      momentAt: repetition === 0 ? dueAt : now,
      concerns: [call.body.person],
    }))
}

function idOf({ entry }: { readonly entry: string }): string {
  return `call:${entry}`
}

/** Of several thresholds passed at once only the last says anything new. */
function latestOfEach<T extends Pick<Due, 'about' | 'momentAt'>>(alerts: readonly T[]): T[] {
  const latest = new Map<string, T>()
  for (const alert of alerts) {
    const before = latest.get(alert.about)
    if (!before || before.momentAt <= alert.momentAt) latest.set(alert.about, alert)
  }
  return [...latest.values()]
}
