/** What a figure cannot be trusted for, in words beside it. */
import type { ClockShown } from '../meeting/port.ts'

export interface Doubt {
  readonly standing: ClockShown['standing']
  readonly boundMs: number
  /** Its clock stands still. */
  readonly held: boolean
}

/** `standing`, `± 0.3 s`, `not sure`: none while the figure is what it says. */
export function doubtWords({ standing, boundMs, held }: Doubt): readonly string[] {
  const words = held ? ['standing'] : []
  if (standing === 'notSure') words.push('not sure')
  if (standing === 'roughly') words.push(`± ${(Math.ceil(boundMs / 100) / 10).toFixed(1)} s`)
  return words
}
