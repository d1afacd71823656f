/** Ends of stints, next duties, reliefs at posts. */
import { dutiesNow, isThereAlready, nextDutyOf } from '../clocks/duties.ts'
import { driverNow, stintClock } from '../clocks/stint-clock.ts'
import type { PlanSpan } from '../documents/plan.ts'
import { moveLabel, personName } from '../fold/names.ts'
import type { DutySpan, State } from '../fold/state.ts'
import { clockAt } from '../time/clock-map.ts'
import { planInForce } from '../time/plan-in-force.ts'
import { currentRun, segmentsOf, type SegmentOutlook } from '../time/programme.ts'
import type { Obligation } from './obligation.ts'
import { standsStill } from '../time/standing-still.ts'

export function dutiesDue(state: State, now: number): readonly Obligation[] {
  const people = new Set(planInForce(state, now)?.spans.map((span) => span.person))
  const outlooks = segmentsOf(state, now)
  const due: Obligation[] = [...stintEnd(state, now)]
  for (const person of people) {
    const next = nextDutyOf(state, person, now)
    const outlook = next && outlooks.find((one) => one.item.id === next.span.segment)
    if (!next || !outlook) continue
    if (isWaitingThere(state, outlook, next.span)) continue
    const held = standsStill(state, outlook, now)
    due.push(nextDuty(state, { span: next.span, dueAt: next.startsAt, held }))
    const relieved = whoIsRelieved(state, outlook, next.span)
    if (relieved) due.push(relief(state, { span: next.span, dueAt: next.startsAt, held }, relieved))
  }
  return due
}

/** Nothing is owed by who already stands where the next segment wants them; a driver is to be ready. */
function isWaitingThere(state: State, outlook: SegmentOutlook, span: PlanSpan): boolean {
  if (outlook.run || span.fromMs > 0 || span.duty === 'controller') return false
  return isThereAlready(state, span)
}

/** A stint that lasts as long as its segment ends with it, and is not named twice. */
function stintEnd(state: State, now: number): readonly Obligation[] {
  const stint = stintClock(state, now)
  const run = currentRun(state)
  const duty = driverNow(state)
  if (!stint || !run || !duty || stint.plannedEndAt === undefined) return []
  const endMs = clockAt(run, now).clockMs + (stint.toGoMs ?? 0)
  if (run.length.by === 'time' && endMs >= run.length.lengthMs) return []
  return [
    {
      id: `stintEnd:${duty.entry}:${run.entry}`,
      kind: 'stintEnd',
      dueAt: stint.plannedEndAt,
      held: !stint.running,
      lengthMs: stint.lengthMs ?? 0,
      concerns: [stint.person],
      label: `${personName(state, stint.person)}’s stint ends`,
    },
  ]
}

interface Due {
  readonly span: PlanSpan
  readonly dueAt: number
  readonly held: boolean
}

function nextDuty(state: State, { span, dueAt, held }: Due): Obligation {
  const label = moveLabel(state, span)
  const concerns = [span.person]
  const lengthMs = waitOf(span)
  return { id: `nextDuty:${span.id}`, kind: 'nextDuty', dueAt, held, ...lengthMs, concerns, label }
}

/** Whoever stands at the post now is told who comes. */
function relief(state: State, { span, dueAt, held }: Due, relieved: DutySpan): Obligation {
  const who = `${personName(state, span.person)} relieves ${personName(state, relieved.person)}`
  return {
    id: `relief:${span.id}`,
    kind: 'relief',
    dueAt,
    held,
    ...waitOf(span),
    concerns: [relieved.person],
    label: span.post === undefined ? who : `${who} at post ${span.post}`,
  }
}

/** From green; what begins with it has no wait that is known. */
function waitOf({ fromMs }: PlanSpan): Pick<Obligation, 'lengthMs'> {
  return fromMs === 0 ? {} : { lengthMs: fromMs }
}

function whoIsRelieved(
  state: State,
  outlook: SegmentOutlook,
  span: PlanSpan,
): DutySpan | undefined {
  if (span.duty !== 'post' || !outlook.run) return undefined
  return dutiesNow(state).find(
    (duty) => duty.duty === 'post' && duty.post === span.post && duty.person !== span.person,
  )
}
