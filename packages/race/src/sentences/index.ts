/** How every kind of rule reads. A kind without a sentence does not compile. */
import { allowance } from './allowance.ts'
import { blockDriving } from './block-driving.ts'
import { bodyOffChassis } from './body-off-chassis.ts'
import { changeAtStop } from './change-at-stop.ts'
import { changeWithOneself } from './change-with-oneself.ts'
import { classified } from './classified.ts'
import { clockPolicy } from './clock-policy.ts'
import { closedPeriod } from './closed-period.ts'
import { compulsoryRepair } from './compulsory-repair.ts'
import { continuousDriving } from './continuous-driving.ts'
import { countsAsDriving } from './counts-as-driving.ts'
import { cutProRata } from './cut-pro-rata.ts'
import { darkHours } from './dark-hours.ts'
import { darkSegments } from './dark-segments.ts'
import { driverChange } from './driver-change.ts'
import { driverRest } from './driver-rest.ts'
import { drivingSegments } from './driving-segments.ts'
import { drivingShare } from './driving-share.ts'
import { drivingSpread } from './driving-spread.ts'
import { drivingTime } from './driving-time.ts'
import { endDriver } from './end-driver.ts'
import { energy } from './energy.ts'
import { equalShare } from './equal-share.ts'
import { followingDrivers } from './following-drivers.ts'
import { laneChange } from './lane-change.ts'
import { laneOrder } from './lane-order.ts'
import { lapsBetweenChanges } from './laps-between-changes.ts'
import { mandatoryStops } from './mandatory-stops.ts'
import { marshalShift } from './marshal-shift.ts'
import { marshalWhileDriving } from './marshal-while-driving.ts'
import { marshalsOwed } from './marshals-owed.ts'
import { mayNotDo } from './may-not-do.ts'
import { numberOfChanges } from './number-of-changes.ts'
import { numberOfDrivers } from './number-of-drivers.ts'
import { penalty } from './penalty.ts'
import { pitBox } from './pit-box.ts'
import { pitLaneLap } from './pit-lane-lap.ts'
import { points } from './points.ts'
import { postByLane } from './post-by-lane.ts'
import { relief } from './relief.ts'
import { restBlock } from './rest-block.ts'
import { restart } from './restart.ts'
import { rollingDriving } from './rolling-driving.ts'
import { runningBetweenStops } from './running-between-stops.ts'
import { scoring } from './scoring.ts'
import { servePenalty } from './serve-penalty.ts'
import { sitOutDuty } from './sit-out-duty.ts'
import { startingLane } from './starting-lane.ts'
import { stintsEach } from './stints-each.ts'
import { stintsInARow } from './stints-in-a-row.ts'
import { stopMinimum } from './stop-minimum.ts'
import { stopRhythm } from './stop-rhythm.ts'
import { stopTask } from './stop-task.ts'
import { stopWindows } from './stop-windows.ts'
import { ties } from './ties.ts'
import { trackCallStop } from './track-call-stop.ts'
import { tracks } from './tracks.ts'
import { whoWorks } from './who-works.ts'
import { workAllowed } from './work-allowed.ts'
import type { RuleKind } from '../rules/index.ts'
import type { Sentence } from './sentence.ts'

export const SENTENCES: { readonly [K in RuleKind]: Sentence<K> } = {
  laneOrder,
  startingLane,
  tracks,
  laneChange,
  restart,
  darkSegments,
  darkHours,
  sitOutDuty,
  drivingTime,
  drivingShare,
  drivingSegments,
  equalShare,
  drivingSpread,
  continuousDriving,
  runningBetweenStops,
  changeAtStop,
  numberOfChanges,
  lapsBetweenChanges,
  rollingDriving,
  blockDriving,
  driverRest,
  restBlock,
  stintsEach,
  stintsInARow,
  numberOfDrivers,
  followingDrivers,
  endDriver,
  mayNotDo,
  cutProRata,
  countsAsDriving,
  changeWithOneself,
  mandatoryStops,
  stopMinimum,
  stopWindows,
  stopRhythm,
  closedPeriod,
  stopTask,
  driverChange,
  trackCallStop,
  pitBox,
  servePenalty,
  energy,
  pitLaneLap,
  workAllowed,
  whoWorks,
  bodyOffChassis,
  allowance,
  marshalsOwed,
  marshalWhileDriving,
  postByLane,
  marshalShift,
  relief,
  compulsoryRepair,
  clockPolicy,
  scoring,
  points,
  ties,
  classified,
  penalty,
}
