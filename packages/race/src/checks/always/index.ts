/** What holds without any rule. */
import type { AlwaysCheck } from '../case.ts'
import { canTakeDuty } from './can-take-duty.ts'
import { inTheCrew } from './in-the-crew.ts'
import { insideSegments } from './inside-segments.ts'
import { isThere } from './is-there.ts'
import { oneDriver } from './one-driver.ts'
import { oneDuty } from './one-duty.ts'
import { orderOfMoves } from './order-of-moves.ts'
import { somebodyDrives } from './somebody-drives.ts'

export const ALWAYS: Readonly<Record<string, AlwaysCheck>> = {
  oneDuty,
  oneDriver,
  somebodyDrives,
  inTheCrew,
  canTakeDuty,
  isThere,
  insideSegments,
  orderOfMoves,
}
