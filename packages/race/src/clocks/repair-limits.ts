/** The limits one compulsory repair has, as clocks. */
import { inForce } from '../fold/in-force.ts'
import type { FaultState, State } from '../fold/state.ts'
import type { RuleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { lapsNow, lappingMs } from '../time/lapping.ts'
import { currentRun, segmentsOf } from '../time/programme.ts'
import { holdsNow } from '../time/held.ts'
import { standsStill } from '../time/standing-still.ts'
import { runningWithMs } from './fault-clocks.ts'
import { paceNow } from './pace.ts'

export interface RepairLimit {
  readonly by: 'time' | 'laps' | 'laneChange' | 'atOnce'
  readonly laps?: number
  /** The whole of it; the three below are absent for laps while no pace is known. */
  readonly lengthMs?: number
  /** Below 0 once it is over. */
  readonly remainingMs?: number
  readonly dueAt?: number
  /** Whether it counts on. */
  readonly running: boolean
  readonly over: boolean
  /** Reckoned at the pace entered for who drives. */
  readonly estimated: boolean
}

type Value = Pick<RuleValue<'compulsoryRepair'>, 'laps' | 'withinMs' | 'until'>

interface Asked {
  readonly fault: FaultState
  readonly value: Partial<Value>
  readonly now: number
}

/**
 * In time it counts while a segment runs, held as the rules hold it; in laps while the car laps, shown as time; by a
 * lane change it ends when the segment before it does, and is over at the next green. Soonest first.
 */
export function repairLimits(state: State, asked: Asked): readonly RepairLimit[] {
  const { value, fault, now } = asked
  const limits: RepairLimit[] = []
  const until = known(value.until)
  if (until === 'atOnce') limits.push(atOnce(fault, now))
  if (until === 'laneChange') limits.push(laneChange(state, fault, now))
  const withinMs = known(value.withinMs)
  if (withinMs !== undefined) limits.push(inTime(state, asked, withinMs))
  const laps = known(value.laps)
  if (laps !== undefined) limits.push(inLaps(state, asked, laps))
  return limits.sort((a, b) => (a.dueAt ?? Infinity) - (b.dueAt ?? Infinity))
}

function atOnce({ notedAt }: FaultState, now: number): RepairLimit {
  const clock = { lengthMs: 0, remainingMs: Math.min(0, notedAt - now), dueAt: notedAt }
  return { by: 'atOnce', ...clock, running: true, over: true, estimated: false }
}

function inTime(state: State, { fault, now }: Asked, lengthMs: number): RepairLimit {
  const remainingMs = lengthMs - runningWithMs(state, fault, now)
  const clock = { lengthMs, remainingMs, dueAt: now + remainingMs }
  const running = currentRun(state) !== undefined && !holdsNow(state, 'repairLimit')
  return { by: 'time', ...clock, running, over: remainingMs <= 0, estimated: false }
}

function inLaps(state: State, { fault, now }: Asked, laps: number): RepairLimit {
  const running = lapsNow(state)
  const paceMs = paceNow(state, now)
  if (paceMs === undefined) return { by: 'laps', laps, running, over: false, estimated: true }
  const lengthMs = laps * paceMs
  const remainingMs = lengthMs - lappingMs(state, { fromAt: fault.notedAt, toAt: now })
  const clock = { lengthMs, remainingMs, dueAt: now + remainingMs }
  return { by: 'laps', laps, ...clock, running, over: remainingMs <= 0, estimated: true }
}

/** Where no lane change comes any more, the end of the segment that runs counts, or of the next one. */
function laneChange(state: State, { notedAt }: FaultState, now: number): RepairLimit {
  const limit = { by: 'laneChange', estimated: false } as const
  const passed = passedAt(state, notedAt, now)
  if (passed !== undefined) {
    return { ...limit, remainingMs: passed - now, dueAt: passed, running: true, over: true }
  }
  const next = segmentsOf(state, now).filter(
    (one) => one.state === 'running' || one.state === 'ahead',
  )
  const isNow = wentOver(state, now)
  const until = isNow
    ? next[0]
    : (next.find((one) => isBeforeLaneChange(state, one.item.id, now)) ?? next[0])
  const at = isNow ? until?.startsAt : until?.endsAt
  if (until === undefined || at === undefined) return { ...limit, running: false, over: false }
  const dueAt = Math.max(at, now)
  const clock = { lengthMs: Math.max(0, dueAt - notedAt), remainingMs: dueAt - now, dueAt }
  return { ...limit, ...clock, running: !standsStill(state, until, now), over: false }
}

/** The green after a lane change that came since. */
function passedAt(state: State, notedAt: number, now: number): number | undefined {
  const { runs } = state.raceControl
  return runs.find((run, place) => {
    const before = runs[place - 1]
    return run.greenAt > notedAt && before && isBeforeLaneChange(state, before.segment, now)
  })?.greenAt
}

/** Whether the meeting stands in a lane change. */
function wentOver(state: State, now: number): boolean {
  const last = state.raceControl.runs.at(-1)
  return last?.endAt !== undefined && isBeforeLaneChange(state, last.segment, now)
}

function isBeforeLaneChange(state: State, segment: string, now: number): boolean {
  const programme = inForce(state, 'rules', now)?.programme ?? []
  const line = programme.findIndex((item) => item.id === segment)
  return line >= 0 && programme[line + 1]?.kind === 'laneChange'
}
