/** The right of the wall: open faults with both clocks; those a rule is about first, the soonest of them on top. */
import { faultClocks, type FaultClocks } from '@pitlamp/race'
import type { FaultShown } from '../../parts/shown.ts'
import { clockTime, figure } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import { repairsShown } from './repairs.ts'

/** What a fault is called between the press that stamps its time and the tile that names it. */
export const UNNAMED_FAULT = 'Fault, not named yet'

const PAUSED = {
  byRule: 'paused: hands off the car',
  byHand: 'paused',
} as const satisfies Record<NonNullable<FaultClocks['paused']>, string>

export interface OpenFault extends FaultShown {
  readonly dueAt: number
}

export function faultsShown(seen: Seen): readonly OpenFault[] {
  const { state, now, crew } = seen
  const repairs = repairsShown(seen)
  const shown = faultClocks(state, now)
    .filter(({ fault }) => fault.ended === undefined)
    .map(({ fault, runningWithMs, repairMs, repairing, paused }) => {
      const repair = repairs.find((one) => one.fault === fault.entry)
      return {
        id: fault.entry,
        name: fault.fault,
        noted: clockTime(fault.notedAt, crew.timeZone),
        runningWith: figure(runningWithMs),
        repair: fault.repairs.length === 0 ? undefined : figure(repairMs),
        repairing,
        paused: paused && PAUSED[paused],
        rule: repair?.rule,
        urgency: repair?.urgency ?? ('calm' as const),
        unnamed: fault.fault === UNNAMED_FAULT,
        lit: false,
        dueAt: repair?.dueAt ?? Infinity,
      }
    })
  return shown.sort((a, b) => (a.dueAt === b.dueAt ? 0 : a.dueAt - b.dueAt))
}
