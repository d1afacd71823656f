/** The middle of the wall: the next thing the team owes the clock, and what comes after it. */
import type { Obligation, ObligationKind } from '@pitlamp/race'
import type { LineShown, ObligationShown } from '../../parts/shown.ts'
import { steady } from '../../parts/steady.ts'
import { countdown, figure } from '../../parts/time.ts'
import { urgencyOf, type Urgency } from '../../parts/urgency.ts'

/** Told elsewhere on the wall: the stint on the left, faults on the right, the clock on top, calls in their own lines. */
const ELSEWHERE: ReadonlySet<ObligationKind> = new Set([
  'stintEnd',
  'stopGo',
  'callDue',
  'callUnanswered',
  'readTheClock',
  'repairLimit',
])
const PRESSING = { now: 0, soon: 1, calm: 2 } as const satisfies Record<Urgency, number>

export interface DueShown {
  readonly card?: ObligationShown
  readonly lines: readonly LineShown[]
  /** Obligations that are in sight somewhere on the wall. */
  readonly told: readonly string[]
}

/** What one press on the card records. */
const PRESS: { readonly [K in ObligationKind]?: string } = {
  servePenalty: 'Served',
  energyEmpty: 'Filled',
}

const LINES = 2
/** Where nothing says how long it was to be, the wick is the last half hour of it. */
const LAST_STRETCH_MS = 1_800_000
const SAME_MOMENT_MS = 1_000

/**
 * The most urgent is the card; of those equally urgent stops come before people, the segment's end last.
 * `handoverAt` is the handover shown step by step on the left: its people are not told again here. At most `most`
 * further ones stand in a line each.
 */
export function dueShown(
  all: readonly Obligation[],
  now: number,
  { handoverAt, most = LINES }: { readonly handoverAt?: number; readonly most?: number } = {},
): DueShown {
  const reliefs = new Set(all.filter(({ kind }) => kind === 'relief').map(spanOf))
  const toldElsewhere = (one: Obligation) =>
    ELSEWHERE.has(one.kind) ||
    // A load that lasts stands in its own line.
    (one.kind === 'energyEmpty' && pressing(one, now) === PRESSING.calm) ||
    (isPeople(one) && toldOnTheLeft(one, handoverAt)) ||
    (one.kind === 'nextDuty' && reliefs.has(spanOf(one)))
  const [first, ...rest] = all
    .filter((one) => !toldElsewhere(one))
    .sort((a, b) => pressing(a, now) - pressing(b, now) || sort(a) - sort(b) || a.dueAt - b.dueAt)
  const lines = rest.sort((a, b) => a.dueAt - b.dueAt).slice(0, most)
  const inSight = [
    ...all.filter((one) => toldElsewhere(one) || one.kind === 'segmentEnd'),
    ...lines,
  ]
  return {
    card: first && { ...obligationShown(first, now), press: PRESS[first.kind] },
    lines: lines.map((one) => ({
      id: one.id,
      words: one.label,
      figure: obligationShown(one, now).figure ?? '',
    })),
    told: [...inSight, ...(first ? [first] : [])].map(({ id }) => id),
  }
}

export function obligationShown(one: Obligation, now: number): ObligationShown {
  const leftMs = one.dueAt - now
  const urgency = urgencyOf(one.kind, leftMs)
  const common = { id: one.id, what: one.label, urgency, held: one.held, lit: false }
  // Nobody said within how many laps, or how long they take.
  if (one.kind === 'servePenalty' && one.lengthMs === undefined) {
    return { ...common, label: 'at the next opportunity', held: false }
  }
  const label = leftMs < 0 ? 'overdue' : urgency === 'calm' ? 'Next, in' : 'due in'
  return {
    ...common,
    label: one.estimated === true ? `${label}, estimated` : label,
    figure: figureOf(one, now),
    left: leftMs / (one.lengthMs ?? LAST_STRETCH_MS),
  }
}

function figureOf({ dueAt, lengthMs }: Obligation, now: number): string {
  const leftMs = dueAt - now
  if (leftMs < 0) return `+${figure(leftMs)}`
  // As wide as the longest its wick shows, and so like the stint beside it.
  return steady(countdown(leftMs), countdown(lengthMs ?? LAST_STRETCH_MS))
}

function pressing({ kind, dueAt }: Obligation, now: number): number {
  return PRESSING[urgencyOf(kind, dueAt - now)]
}

function sort({ kind }: Obligation): number {
  if (kind === 'segmentEnd') return 2
  return isPeople({ kind }) ? 1 : 0
}

function isPeople({ kind }: Pick<Obligation, 'kind'>): boolean {
  return kind === 'nextDuty' || kind === 'relief'
}

function toldOnTheLeft({ dueAt }: Obligation, handoverAt: number | undefined): boolean {
  return handoverAt !== undefined && Math.abs(dueAt - handoverAt) < SAME_MOMENT_MS
}

/** A relief and the duty it begins are one line of the plan: `relief:x`, `nextDuty:x`. */
function spanOf({ id }: Obligation): string {
  return id.slice(id.indexOf(':') + 1)
}
