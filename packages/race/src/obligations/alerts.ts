import type { Obligation, ObligationKind } from './obligation.ts'

export interface Alert {
  readonly id: string
  readonly obligation: Obligation
  readonly thresholdMs: number
}

const DEFAULT = [600_000, 300_000, 120_000, 60_000, 0]

/** How long before it falls due each kind speaks up. Common practice, no source. */
export const ALERT_THRESHOLDS_MS: Readonly<Record<ObligationKind, readonly number[]>> = {
  stintEnd: DEFAULT,
  stopWindowOpens: DEFAULT,
  stopWindowCloses: DEFAULT,
  plannedStop: DEFAULT,
  stopGo: [10_000, 0],
  nextDuty: DEFAULT,
  relief: DEFAULT,
  segmentEnd: DEFAULT,
  callDue: [0],
  callUnanswered: [0],
  readTheClock: [0],
  repairLimit: DEFAULT,
  energyEmpty: DEFAULT,
  servePenalty: DEFAULT,
  protestEnds: DEFAULT,
  lightTest: DEFAULT,
}

/** Whether the captain chooses the moments of this kind: GO, calls and the clock have their own. */
export function isCaptains(kind: ObligationKind): boolean {
  return ALERT_THRESHOLDS_MS[kind] === DEFAULT
}

/**
 * Alerts whose moment lies after `from` and not after `to`, in order of their moments; none while an
 * obligation is held. A due time can jump when the hall's clock is read: call it with `from` up to 30 s back
 * and leave out the ids already heard, so that a jump skips nothing.
 */
export function alertsBetween(
  obligations: readonly Obligation[],
  from: number,
  to: number,
): readonly Alert[] {
  const alerts: Alert[] = []
  for (const obligation of obligations) {
    if (obligation.held) continue
    for (const thresholdMs of obligation.alertsMs ?? ALERT_THRESHOLDS_MS[obligation.kind]) {
      const at = momentOf(obligation, thresholdMs)
      if (at <= from || at > to) continue
      alerts.push({ id: `${obligation.id}@${thresholdMs}`, obligation, thresholdMs })
    }
  }
  return alerts.sort(
    (a, b) => momentOf(a.obligation, a.thresholdMs) - momentOf(b.obligation, b.thresholdMs),
  )
}

function momentOf(obligation: Obligation, thresholdMs: number): number {
  return obligation.dueAt - thresholdMs
}
