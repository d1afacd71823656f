/** When the car stops, how long, and what is done. */
import { closedPeriod } from './closed-period.ts'
import { driverChange } from './driver-change.ts'
import { energy } from './energy.ts'
import { mandatoryStops } from './mandatory-stops.ts'
import { stopMinimum } from './stop-minimum.ts'
import { stopRhythm } from './stop-rhythm.ts'
import { stopTask } from './stop-task.ts'
import { stopWindows } from './stop-windows.ts'

export const STOP_CHECKS = {
  mandatoryStops,
  stopMinimum,
  stopWindows,
  stopRhythm,
  closedPeriod,
  stopTask,
  driverChange,
  energy,
}
