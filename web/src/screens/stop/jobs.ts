/** The work of a stop: open faults, and those mended since the car came in. */
import { faultClocks, type StopState } from '@pitlamp/race'
import { figure } from '../../parts/time.ts'
import type { Seen } from '../wall/people.ts'

export interface Job {
  readonly id: string
  readonly what: string
  readonly done: boolean
  readonly repairing: boolean
  readonly repair?: string
}

export function jobsOf({ state, now }: Seen, stop: StopState): readonly Job[] {
  const since = cameInAt(stop)
  return faultClocks(state, now)
    .filter(
      ({ fault: { ended } }) =>
        ended === undefined || (ended.how === 'mended' && ended.at >= since),
    )
    .map(({ fault, repairMs, repairing }) => ({
      id: fault.entry,
      what: fault.fault,
      done: fault.ended !== undefined,
      repairing,
      repair: fault.repairs.length === 0 ? undefined : figure(repairMs),
    }))
}

export function cameInAt({ moments }: StopState): number {
  return moments.pitEntry?.at ?? moments.stopped?.at ?? 0
}
