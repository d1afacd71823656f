/** Whether a device is ready for green, from what it reports of itself and what somebody found on it. */
import type { DeviceCheck, DeviceReport } from '@pitlamp/contract'
import { clockWords } from './standing.ts'

type Parts = Pick<DeviceReport, 'clock' | 'battery' | 'check'>

interface Readiness {
  readonly ready: boolean
  /** What stands in the way, each in a few words; what was not tried stands in the way too. */
  readonly missing: readonly string[]
}

export const AWAKE_WORDS = {
  held: 'the screen stays lit',
  plainHttp: 'the screen may go dark: the address is plain HTTP',
  refused: 'the screen may go dark: the device refuses, perhaps to save power',
  unavailable: 'the screen may go dark: this browser cannot keep it lit',
} as const satisfies Record<NonNullable<DeviceCheck['awake']>, string>

/**
 * Needed: a tone that was heard, a screen that stays lit, a charger, a set clock. Speech and shaking help and many
 * devices have neither. Common practice, no source.
 */
export function readiness({ clock, battery, check = { at: 0 } }: Parts): Readiness {
  const { sound, awake } = check
  const plugged = battery?.charging ?? (check.charger && check.charger === 'plugged')
  const missing = [
    sound === undefined && 'sound not tried',
    sound === 'notHeard' && 'sound not heard',
    awake === undefined && 'staying lit not tried',
    awake !== undefined && awake !== 'held' && AWAKE_WORDS[awake],
    plugged === undefined && 'charger not known',
    plugged === false && 'no charger',
    clock.standing !== 'set' && clockWords(clock),
  ].filter((words) => words !== false)
  return { ready: missing.length === 0, missing }
}

/** `charging, 85 %`; as somebody answered where the device cannot say; undefined where nobody knows. */
export function powerWords({ battery, check }: Parts): string | undefined {
  if (battery) return `${battery.charging ? 'charging' : 'on battery'}, ${battery.percent} %`
  if (check?.charger === undefined) return undefined
  return check.charger === 'plugged' ? 'on a charger' : 'no charger'
}
