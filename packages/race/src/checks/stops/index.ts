/** When the car stops, how long, and what is done. */

const TO_COME = { notChecked: 'to come' }

export const STOP_CHECKS = {
  mandatoryStops: TO_COME,
  stopMinimum: TO_COME,
  stopWindows: TO_COME,
  stopRhythm: TO_COME,
  closedPeriod: TO_COME,
  stopTask: TO_COME,
  driverChange: TO_COME,
  energy: TO_COME,
}
