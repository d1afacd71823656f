/** Who drives, how much, when and after whom. */
import { drivingTime } from './driving-time.ts'

const TO_COME = { notChecked: 'to come' }

export const DRIVING_CHECKS = {
  drivingTime,
  drivingShare: TO_COME,
  drivingSegments: TO_COME,
  equalShare: TO_COME,
  drivingSpread: TO_COME,
  continuousDriving: TO_COME,
  runningBetweenStops: TO_COME,
  changeAtStop: TO_COME,
  numberOfChanges: TO_COME,
  rollingDriving: TO_COME,
  blockDriving: TO_COME,
  driverRest: TO_COME,
  stintsEach: TO_COME,
  stintsInARow: TO_COME,
  numberOfDrivers: TO_COME,
  followingDrivers: TO_COME,
  endDriver: TO_COME,
  mayNotDo: TO_COME,
}
