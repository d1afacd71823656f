/** Stop windows that are being written. */
import type { RuleValue } from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'

export type Window = Exclude<RuleValue<'stopWindows'>['windows'], 'notKnownYet'>[number]

const HOUR_MS = 3_600_000
const MINUTE_MS = 60_000

/**
 * In the first segment that has fewest of them; the middle half of it, until somebody says otherwise.
 * Undefined where there is no segment.
 */
export function freshWindow(
  windows: readonly Window[],
  segments: readonly (readonly [id: string, name: string])[],
  lengthOf: (segment: string) => number | undefined,
): Window | undefined {
  const count = (id: string) => windows.filter(({ segment }) => segment === id).length
  const [least] = segments.map(([id]) => id).sort((a, b) => count(a) - count(b))
  if (least === undefined) return undefined
  const quarterMs = Math.round((lengthOf(least) ?? HOUR_MS) / 4 / MINUTE_MS) * MINUTE_MS
  return { id: freshId('w', windows), segment: least, fromMs: quarterMs, toMs: 3 * quarterMs }
}
