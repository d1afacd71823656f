/** What can be said of an open fault, and the entry each press makes. */
import type { Kind } from '@pitlamp/race'

export type FaultPress = 'name' | 'start' | 'pause' | 'mended' | 'left' | 'fit'

export const FAULT_PRESS = {
  start: { kind: 'repairStarted.1', word: 'Repair started' },
  pause: { kind: 'repairPaused.1', word: 'Repair paused' },
  mended: { kind: 'repairFinished.1', word: 'Mended' },
  left: { kind: 'faultLeft.1', word: 'Fault left' },
} as const satisfies Record<
  Exclude<FaultPress, 'name' | 'fit'>,
  { readonly kind: Kind; readonly word: string }
>
