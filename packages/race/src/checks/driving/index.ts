/** Who drives, how much, when and after whom. */
import { blockDriving } from './block-driving.ts'
import { changeAtStop } from './change-at-stop.ts'
import { continuousDriving } from './continuous-driving.ts'
import { driverRest } from './driver-rest.ts'
import { drivingSegments } from './driving-segments.ts'
import { drivingShare } from './driving-share.ts'
import { drivingSpread } from './driving-spread.ts'
import { drivingTime } from './driving-time.ts'
import { endDriver } from './end-driver.ts'
import { equalShare } from './equal-share.ts'
import { followingDrivers } from './following-drivers.ts'
import { lapsBetweenChanges } from './laps-between-changes.ts'
import { mayNotDo } from './may-not-do.ts'
import { numberOfChanges } from './number-of-changes.ts'
import { numberOfDrivers } from './number-of-drivers.ts'
import { restBlock } from './rest-block.ts'
import { rollingDriving } from './rolling-driving.ts'
import { runningBetweenStops } from './running-between-stops.ts'
import { stintsEach } from './stints-each.ts'
import { stintsInARow } from './stints-in-a-row.ts'

export const DRIVING_CHECKS = {
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
}
