import { counted } from '@pitlamp/race'
import type { AlertShown } from './port.ts'

/** `Mandatory stop 2 in 2 minutes`, as it is spoken; a call is spoken as it was written. */
export function spoken({ label, thresholdMs }: Pick<AlertShown, 'label' | 'thresholdMs'>): string {
  if (thresholdMs === undefined) return label
  if (thresholdMs === 0) return `${label}, now`
  const seconds = Math.round(thresholdMs / 1_000)
  if (seconds < 60) return `${label} in ${counted(seconds, 'second')}`
  const minutes = Math.round(seconds / 60)
  return `${label} in ${counted(minutes, 'minute')}`
}
