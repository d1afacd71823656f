import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { driverNow } from './stint-clock.ts'

/**
 * The lap time entered for whoever drives now, in ms; undefined where nobody drives or none was entered. What is
 * reckoned with it is an estimate.
 */
export function paceNow(state: State, now: number): number | undefined {
  const driver = driverNow(state)
  if (!driver) return undefined
  const people = inForce(state, 'crew', now)?.people ?? []
  const paceMs = people.find(({ id }) => id === driver.person)?.paceMs
  return paceMs === 0 ? undefined : paceMs
}
