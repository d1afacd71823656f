import type { Body } from '../entry/kinds/index.ts'
import type { Pressing } from './pressing.ts'

/** Race control changes the first segment, or another one. */
export function changedTo(
  pressing: Pressing,
  at: number,
  change: Body<'segmentChanged.1'>['change'] & { readonly segment?: string },
): string {
  const { segment = 'one', ...rest } = change
  return pressing.press(at, 'segmentChanged.1', { segment, change: rest })
}
