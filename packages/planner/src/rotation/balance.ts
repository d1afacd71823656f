/** Equal shares against laps: what somebody drives beyond the tolerance around their share has its price. */
import { MINUTE_MS } from '../grid/grid.ts'
import type { Rotation } from './rotation.ts'

export function addBalance(rotation: Rotation): void {
  const { grid, model } = rotation
  const { toleranceMs, lapsPerHour } = grid.problem.balance
  const parts = grid.drivers.reduce((sum, { share = 1 }) => sum + share, 0)
  if (lapsPerHour <= 0 || parts <= 0) return
  for (const person of grid.drivers) {
    const { share = 1 } = person
    if (share === 0) continue
    const fair = (grid.runMs * share) / parts / MINUTE_MS
    const spare = toleranceMs / MINUTE_MS
    const off = model.part({ cost: -lapsPerHour / 60, upper: Infinity })
    const total = [rotation.totalMinutes(person), 1] as const
    model.row([total, [off, -1]], { atMost: fair + spare })
    model.row([total, [off, 1]], { atLeast: fair - spare })
  }
}
