/** What survives a reload: how the server's time stood to the device's wall clock. */
import { A_DAY_MS, DRIFT } from './bounds.ts'

export interface WallReckoning {
  readonly offsetToDateMs: number
  readonly atDateMs: number
  readonly boundMs: number
  readonly epoch: number
}

/**
 * For `hello.reckoned`, in whole milliseconds. The bound grows by 100 ppm of the time since. Undefined where
 * the wall clock shows an earlier time than then: it was set back, and says nothing.
 */
export function reckonedByWall(
  wall: WallReckoning,
  dateMs: number,
): { readonly serverMs: number; readonly boundMs: number; readonly epoch: number } | undefined {
  const ageMs = dateMs - wall.atDateMs
  if (ageMs < 0) return undefined
  return {
    serverMs: Math.round(dateMs + wall.offsetToDateMs),
    boundMs: Math.min(A_DAY_MS, Math.ceil(wall.boundMs + DRIFT * ageMs)),
    epoch: wall.epoch,
  }
}
