/** The right of the wall: open faults with both clocks. */
import { faultClocks } from '@pitlamp/race'
import type { FaultShown } from '../../parts/shown.ts'
import { clockTime, figure } from '../../parts/time.ts'
import type { Seen } from './people.ts'

/** What a fault is called between the press that stamps its time and the tile that names it. */
export const UNNAMED_FAULT = 'Fault, not named yet'

export function faultsShown({ state, now, crew }: Seen): readonly FaultShown[] {
  return faultClocks(state, now)
    .filter(({ fault }) => fault.ended === undefined)
    .map(({ fault, runningWithMs, repairMs, repairing }) => ({
      id: fault.entry,
      name: fault.fault,
      noted: clockTime(fault.notedAt, crew.timeZone),
      runningWith: figure(runningWithMs),
      repair: fault.repairs.length === 0 ? undefined : figure(repairMs),
      repairing,
      unnamed: fault.fault === UNNAMED_FAULT,
      lit: false,
    }))
}
