/** Segments run and their clock maps: begun, interrupted, resumed, ended. */
import type { Regulations, SegmentLength } from '../documents/rules.ts'
import type { EntryOf, ReadEntry } from '../entry/read.ts'
import type { Clock, ClockPolicy } from '../rules/clocks.ts'
import { policyFor } from '../rules/policy-for.ts'
import type { Draft, RunDraft } from './draft.ts'
import { inForce } from './in-force.ts'
import type { InterruptionSpan } from './state.ts'

/** A press trails or leads what it records by up to this much: common practice, no source. */
const PRESS_BOUND_MS = 1_000
/** The hall's clock is read off a screen in whole seconds: common practice, no source. */
const READING_BOUND_MS = 1_000

export type Cause = InterruptionSpan['cause']

/** What a segment of the programme is held to last at `at`; undefined where the programme lacks it. */
export function lengthOf(draft: Draft, segment: string, at: number): SegmentLength | undefined {
  const item = inForce(draft, 'rules', at)?.programme.find((line) => line.id === segment)
  if (item?.kind !== 'segment') return undefined
  return draft.raceControl.segmentChanges.reduce<SegmentLength>((length, { body }) => {
    if (body.segment !== segment || body.change.what !== 'length') return length
    return { by: 'time', lengthMs: body.change.lengthMs }
  }, item.length)
}

/** A segment the programme does not have is run all the same; its length is not known. */
const NOT_KNOWN: SegmentLength = { by: 'laps', laps: 0 }

export function beginRun(draft: Draft, entry: EntryOf<'green.1'>, at: number): void {
  const { segment } = entry.body
  const boundMs = PRESS_BOUND_MS + entry.atBoundMs
  const run: RunDraft = {
    entry: entry.id,
    segment,
    length: lengthOf(draft, segment, at) ?? NOT_KNOWN,
    greenAt: at,
    knots: [{ at, clockMs: 0, rate: 1, boundMs }],
  }
  draft.raceControl.runs.push(run)
  draft.raceControl.running = run
}

/** Ends the running segment, and the interruption it stood in. */
export function endRun(draft: Draft, entry: ReadEntry, at: number): void {
  const run = draft.raceControl.running
  if (!run) return
  run.endAt = at
  run.endEntry = entry.id
  closeInterruption(draft, at)
  draft.raceControl.running = undefined
}

export function interrupt(
  draft: Draft,
  entry: EntryOf<'trackCall.1' | 'redFlag.1'>,
  at: number,
): void {
  const { running, interruptions } = draft.raceControl
  if (!running) return
  closeInterruption(draft, at)
  const cause: Cause = entry.kind === 'trackCall.1' ? 'trackCall' : 'redFlag'
  const policy = policiesUnder(inForce(draft, 'rules', at), cause)
  const interruption = { entry: entry.id, cause, fromAt: at, policy }
  interruptions.push(interruption)
  draft.raceControl.interrupted = interruption
  turn(running, policy.segment === 'holds' ? 0 : 1, { entry, at })
}

export function resume(draft: Draft, entry: ReadEntry, at: number): void {
  const { running } = draft.raceControl
  closeInterruption(draft, at)
  if (running) turn(running, 1, { entry, at })
}

function closeInterruption(draft: Draft, at: number): void {
  const { interrupted } = draft.raceControl
  if (interrupted) interrupted.toAt = at
  draft.raceControl.interrupted = undefined
}

function policiesUnder(
  regulations: Regulations | undefined,
  cause: Cause,
): Readonly<Record<Clock, ClockPolicy>> {
  const does = (clock: Clock) => policyFor(regulations, clock, cause).does
  return {
    segment: does('segment'),
    stopMinimum: does('stopMinimum'),
    driving: does('driving'),
    repairLimit: does('repairLimit'),
  }
}

interface Press {
  readonly entry: ReadEntry
  readonly at: number
}

/** A press that stops or starts the race clock; where its policy lets it run on, nothing changes. */
function turn(run: RunDraft, rate: 0 | 1, { entry, at }: Press): void {
  const last = run.knots.at(-1)
  if (!last || last.rate === rate) return
  const clockMs = last.clockMs + (last.rate === 1 ? at - last.at : 0)
  const boundMs = last.boundMs + PRESS_BOUND_MS + entry.atBoundMs
  putKnot(run, { at, clockMs, rate, boundMs })
}

/** What the hall's clock shows counts from here on; our own bound begins anew. */
export function setClock(run: RunDraft, clockMs: number, { entry, at }: Press): void {
  const rate = run.knots.at(-1)?.rate ?? 1
  putKnot(run, { at, clockMs, rate, boundMs: READING_BOUND_MS + entry.atBoundMs })
  run.clockReadAt = at
}

/** Knots rise in `at`: of two at one instant the later stays. */
function putKnot(run: RunDraft, knot: RunDraft['knots'][number]): void {
  if (run.knots.at(-1)?.at === knot.at) run.knots.pop()
  run.knots.push(knot)
}
