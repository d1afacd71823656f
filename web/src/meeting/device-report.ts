/** How this device stands, as the rest of the team is told. */
import type { DeviceReport } from '@pitlamp/contract'
import { battery } from './battery.svelte.ts'
import { deviceChecks } from './device-check.svelte.ts'
import type { ClockShown } from './port.ts'

interface Of {
  readonly meeting: string
  readonly person: string | undefined
  readonly clock: Pick<ClockShown, 'standing' | 'boundMs'>
}

export function deviceReport({ meeting, person, clock }: Of): DeviceReport {
  battery.watch()
  const check = deviceChecks.of(meeting)
  return {
    ...(person !== undefined && { person }),
    clock: { standing: clock.standing, boundMs: coarsely(clock.boundMs) },
    ...(battery.shown && { battery: battery.shown }),
    ...(check && { check }),
  }
}

/** Up to the next 50 ms, or half second: the bound moves with every probe, and each change is told to all. */
export function coarsely(boundMs: number): number {
  const step = boundMs <= 500 ? 50 : 500
  return Math.min(MOST_MS, Math.ceil(boundMs / step) * step)
}

const MOST_MS = 86_400_000
