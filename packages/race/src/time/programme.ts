/** The segments of the programme as far as they are known: run, running, or about when they will be. */
import type { ProgrammeItem, SegmentItem } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { SegmentRun, State } from '../fold/state.ts'
import { ruleValue } from '../rules/index.ts'
import { known } from '../rules/shape.ts'
import { atOf } from './clock-map.ts'
import { lengthOf, standingOf } from './segment-standing.ts'

/** Which segment: its line in the programme, its place counted from 0, and of how many. */
export interface SegmentPlace {
  readonly item: SegmentItem
  readonly index: number
  readonly of: number
}

export interface SegmentOutlook extends SegmentPlace {
  readonly state: 'ahead' | 'running' | 'over' | 'abandoned'
  /** Absent where the segment is counted in laps. */
  readonly lengthMs?: number
  readonly run?: SegmentRun
  /** Meeting time: as it was, or about when it will be, never before `now` while it is ahead. */
  readonly startsAt: number
  readonly endsAt?: number
}

/** The run that was given green and has no end yet. */
export function currentRun(state: State): SegmentRun | undefined {
  const last = state.raceControl.runs.at(-1)
  return last?.endAt === undefined ? last : undefined
}

/**
 * Every segment of the rules in force at `now`, in their order. What is ahead follows what went before: the
 * organiser's time where one is named, but not before the items ahead of it are through, unless race control
 * moved it; otherwise after them. A lane change without a length lasts as long as the rules say; laps-long segments
 * and other items without a length take no time in this reckoning.
 */
export function segmentsOf(state: State, now: number): readonly SegmentOutlook[] {
  const programme = inForce(state, 'rules', now)?.programme ?? []
  const segments = programme.filter((item) => item.kind === 'segment')
  const outlooks: SegmentOutlook[] = []
  const laneChangeMs = laneChangeMsOf(state, now)
  const reckoning: Reckoning = { state, now, laneChangeMs, through: undefined, lastEnd: undefined }
  programme.forEach((item, line) => {
    const shift = shiftOf(state, programme, line)
    if (item.kind !== 'segment') {
      passItem(reckoning, item, shift)
      return
    }
    const place = { item, index: segments.indexOf(item), of: segments.length }
    outlooks.push(outlookOf(reckoning, place, shift))
  })
  return outlooks
}

/** Abandoned before it was ever run: nothing planned in it will be. */
export function isGone({ state, run }: SegmentOutlook): boolean {
  return state === 'abandoned' && !run
}

/** The place of a run in the programme; one the programme lacks comes after all that it has. */
export function placeOf(state: State, run: SegmentRun, now: number): SegmentPlace {
  const programme = inForce(state, 'rules', now)?.programme ?? []
  const segments = programme.filter((item) => item.kind === 'segment')
  const index = segments.findIndex((item) => item.id === run.segment)
  const item = segments[index]
  if (item) return { item, index, of: segments.length }
  const unlisted: SegmentItem = { id: run.segment, kind: 'segment', length: run.length }
  return { item: unlisted, index: segments.length, of: segments.length + 1 }
}

/** As long as the rules say that one lasts, where the programme does not. */
function laneChangeMsOf(state: State, now: number): number {
  return known(ruleValue(inForce(state, 'rules', now)?.rules ?? [], 'laneChange')?.lengthMs) ?? 0
}

interface Reckoning {
  readonly state: State
  readonly now: number
  readonly laneChangeMs: number
  /** When everything so far is through, and when the last segment is: undefined while nothing tells. */
  through: number | undefined
  lastEnd: number | undefined
}

interface Shift {
  /** By how much the organiser's times have moved at this line, and by how much at this line itself. */
  readonly soFar: number
  readonly here: number
}

function shiftOf(state: State, programme: readonly ProgrammeItem[], line: number): Shift {
  let soFar = 0
  let here = 0
  for (const { body } of state.raceControl.moves) {
    const from = programme.findIndex((item) => item.id === body.fromItem)
    if (from < 0 || from > line) continue
    soFar += body.byMs
    if (from === line) here += body.byMs
  }
  return { soFar, here }
}

function startOf(reckoning: Reckoning, plannedAt: number | undefined, shift: Shift): number {
  const { through = reckoning.now } = reckoning
  if (plannedAt === undefined) return through + shift.here
  return shift.soFar === 0
    ? Math.max(plannedAt, reckoning.through ?? plannedAt)
    : plannedAt + shift.soFar
}

function passItem(
  reckoning: Reckoning,
  item: Exclude<ProgrammeItem, SegmentItem>,
  shift: Shift,
): void {
  if (reckoning.through === undefined && item.plannedAt === undefined) return
  const start = startOf(reckoning, item.plannedAt, shift)
  const lengthMs = item.lengthMs ?? (item.kind === 'laneChange' ? reckoning.laneChangeMs : 0)
  reckoning.through = Math.max(start, reckoning.lastEnd ?? start) + lengthMs
}

function outlookOf(reckoning: Reckoning, place: SegmentPlace, shift: Shift): SegmentOutlook {
  const { state, now } = reckoning
  const standing = standingOf(state, place.item)
  const { run } = standing
  const lengthMs = lengthOf(state, place.item, run)
  const startsAt = run
    ? run.greenAt
    : Math.max(aheadAt(reckoning, place.item, shift), reckoning.lastEnd ?? 0, now)
  const endsAt = endOf({ run, startsAt, lengthMs, now })
  if (standing.state !== 'abandoned' || run) {
    reckoning.lastEnd = endsAt ?? Math.max(startsAt, now)
    reckoning.through = reckoning.lastEnd
  }
  const known = lengthMs === undefined ? {} : { lengthMs }
  const ends = endsAt === undefined || (!run && standing.state === 'abandoned') ? {} : { endsAt }
  return { ...place, ...standing, ...known, startsAt, ...ends }
}

/** One that is to be run again follows its own first running: what was said of its time before that is spent. */
function aheadAt(reckoning: Reckoning, { id, plannedAt }: SegmentItem, shift: Shift): number {
  const { runs, moves } = reckoning.state.raceControl
  const ended = runs.filter(({ segment }) => segment === id).at(-1)?.endAt
  if (ended === undefined) return startOf(reckoning, plannedAt, shift)
  const since = moves.filter(({ at, body }) => body.fromItem === id && at >= ended)
  return ended + since.reduce((sum, { body }) => sum + body.byMs, 0)
}

function endOf(segment: {
  readonly run: SegmentRun | undefined
  readonly startsAt: number
  readonly lengthMs: number | undefined
  readonly now: number
}): number | undefined {
  const { run, startsAt, lengthMs, now } = segment
  if (run?.endAt !== undefined) return run.endAt
  if (lengthMs === undefined) return undefined
  return run ? atOf(run, lengthMs, now) : startsAt + lengthMs
}
