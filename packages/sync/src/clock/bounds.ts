/** How far off a screen's clock may be, and how that is shown. */

/** How far a device's clock may run off between two probes: 100 ppm. */
export const DRIFT = 100e-6
/** The most an entry's envelope can say of a bound. */
export const A_DAY_MS = 86_400_000

/** Figures plain, figures with ±, or in outline and "not sure". */
export type Standing = 'set' | 'roughly' | 'notSure'

export const SET_WITHIN_MS = 50
const ROUGHLY_WITHIN_MS = 500

export function standingOf(boundMs: number): Standing {
  if (boundMs <= SET_WITHIN_MS) return 'set'
  return boundMs <= ROUGHLY_WITHIN_MS ? 'roughly' : 'notSure'
}
