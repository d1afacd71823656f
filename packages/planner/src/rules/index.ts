/** Every kind of rule. */
import type { Grid } from '../grid/grid.ts'
import type { Rotation } from '../rotation/rotation.ts'
import { blockDriving, type BlockDriving } from './block-driving.ts'
import { changeAtStop, type ChangeAtStop } from './change-at-stop.ts'
import { closedPeriod, type ClosedPeriod } from './closed-period.ts'
import { continuousDriving, type ContinuousDriving } from './continuous-driving.ts'
import { driverChange, type DriverChange } from './driver-change.ts'
import { driverRest, type DriverRest } from './driver-rest.ts'
import { drivingSegments, type DrivingSegments } from './driving-segments.ts'
import { drivingShare, type DrivingShare } from './driving-share.ts'
import { drivingSpread, type DrivingSpread } from './driving-spread.ts'
import { drivingTime, type DrivingTime } from './driving-time.ts'
import { dutyWanted, type DutyWanted } from './duty-wanted.ts'
import { endDriver, type EndDriver } from './end-driver.ts'
import { energy, type Energy } from './energy.ts'
import { equalShare, type EqualShare } from './equal-share.ts'
import { followingDrivers, type FollowingDrivers } from './following-drivers.ts'
import { mandatoryStops, type MandatoryStops } from './mandatory-stops.ts'
import { marshalShift, type MarshalShift } from './marshal-shift.ts'
import { mayNot, type MayNot } from './may-not.ts'
import { numberOfChanges, type NumberOfChanges } from './number-of-changes.ts'
import { numberOfDrivers, type NumberOfDrivers } from './number-of-drivers.ts'
import { relief, type Relief } from './relief.ts'
import { restBlock, type RestBlock } from './rest-block.ts'
import { rollingDriving, type RollingDriving } from './rolling-driving.ts'
import type { Bars, RuleKind } from './rule-kind.ts'
import { runningBetweenStops, type RunningBetweenStops } from './running-between-stops.ts'
import { stintsEach, type StintsEach } from './stints-each.ts'
import { stintsInARow, type StintsInARow } from './stints-in-a-row.ts'
import { stopRhythm, type StopRhythm } from './stop-rhythm.ts'
import { stopTask, type StopTask } from './stop-task.ts'
import { stopWindows, type StopWindows } from './stop-windows.ts'

export type Rule =
  | BlockDriving
  | ChangeAtStop
  | ClosedPeriod
  | ContinuousDriving
  | DriverChange
  | DriverRest
  | DrivingSegments
  | DrivingShare
  | DrivingSpread
  | DrivingTime
  | DutyWanted
  | EndDriver
  | Energy
  | EqualShare
  | FollowingDrivers
  | MandatoryStops
  | MarshalShift
  | MayNot
  | NumberOfChanges
  | NumberOfDrivers
  | Relief
  | RestBlock
  | RollingDriving
  | RunningBetweenStops
  | StintsEach
  | StintsInARow
  | StopRhythm
  | StopTask
  | StopWindows

const KINDS: { readonly [K in Rule['kind']]: RuleKind<Extract<Rule, { kind: K }>> } = {
  blockDriving,
  changeAtStop,
  closedPeriod,
  continuousDriving,
  driverChange,
  driverRest,
  drivingSegments,
  drivingShare,
  drivingSpread,
  drivingTime,
  dutyWanted,
  endDriver,
  energy,
  equalShare,
  followingDrivers,
  mandatoryStops,
  marshalShift,
  mayNot,
  numberOfChanges,
  numberOfDrivers,
  relief,
  restBlock,
  rollingDriving,
  runningBetweenStops,
  stintsEach,
  stintsInARow,
  stopRhythm,
  stopTask,
  stopWindows,
}

/** Kinds that ask for stops for themselves, so that the car may stop without a change of driver. */
const ASK_FOR_STOPS: ReadonlySet<Rule['kind']> = new Set<Rule['kind']>([
  ...(['energy', 'mandatoryStops', 'stopRhythm', 'stopTask', 'stopWindows'] as const),
])

/** A rule and its kind belong together, which the table holds and the compiler cannot follow. */
function kindOf(rule: Rule): RuleKind<Rule> {
  return KINDS[rule.kind] as RuleKind<Rule>
}

export interface RuleBars extends Bars {
  readonly id: string
}

export function barsOf(grid: Grid): readonly RuleBars[] {
  return grid.problem.rules.flatMap((rule) => {
    const bars = kindOf(rule).bars?.(rule, grid)
    return bars ? [{ id: rule.id, ...bars }] : []
  })
}

export function addRules(rotation: Rotation): void {
  for (const rule of rotation.grid.problem.rules) kindOf(rule).rows?.(rule, rotation)
}

export function asksForStops({ kind }: Rule): boolean {
  return ASK_FOR_STOPS.has(kind)
}
