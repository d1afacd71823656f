/** What happens to the car: the kinds that are kept as said, and where to find the others. */
import type { carKinds } from '../../entry/kinds/car.ts'
import { faultLeft, faultNoted, repairFinished, repairPaused, repairStarted } from './faults.ts'
import { said, type Handlers } from './handler.ts'
import { stopIn, stopOut } from './stops.ts'

export const carHandlers: Handlers<keyof typeof carKinds> = {
  'stopIn.1': stopIn,
  'stopOut.1': stopOut,
  'incident.1': (draft, entry, at) => draft.car.incidents.push(said(entry, at)),
  'faultNoted.1': faultNoted,
  'repairStarted.1': repairStarted,
  'repairPaused.1': repairPaused,
  'repairFinished.1': repairFinished,
  'faultLeft.1': faultLeft,
  'partFitted.1': (draft, entry, at) => draft.car.parts.push({ ...said(entry, at), was: 'fitted' }),
  'partRemoved.1': (draft, entry, at) =>
    draft.car.parts.push({ ...said(entry, at), was: 'removed' }),
  'carExchanged.1': (draft, entry, at) => draft.car.exchanges.push(said(entry, at)),
  'measured.1': (draft, entry, at) => draft.car.measurements.push(said(entry, at)),
  'inspected.1': (draft, entry, at) => draft.car.inspections.push(said(entry, at)),
  'energy.1': (draft, entry, at) => draft.car.energy.push(said(entry, at)),
  'workTicked.1': (draft, entry, at) => draft.car.work.push(said(entry, at)),
}
