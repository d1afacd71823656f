/** Parts and tyre sets: what the rules allow, what is left, and what the next one costs before it is fitted. */
import { allowances, type AllowanceNow } from '@pitlamp/race'
import { lapsWords } from '../../parts/penalty-words.ts'
import type { Tile } from '../../parts/shown.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

type Of = AllowanceNow['of']

const PART: Readonly<Record<Of, { readonly part: string; readonly position: string }>> = {
  tyreSets: { part: 'Tyre set', position: 'Tyres' },
  motors: { part: 'Motor', position: 'Motor' },
  bodies: { part: 'Body', position: 'Body' },
  chassis: { part: 'Chassis', position: 'Chassis' },
  cars: { part: 'Spare car', position: 'Car' },
}

export function fitTiles({ state, now }: Seen): readonly Tile[] {
  return allowances(state, now).map((allowance) => ({
    id: allowance.of,
    word: PART[allowance.of].part,
    hint: allowanceWords(allowance),
  }))
}

/** `2 of 4 used, 2 left`; `4 of 4 used, the next one costs 5 laps`. */
function allowanceWords(allowance: AllowanceNow): string {
  const { count, used, onlyOnFailure } = allowance
  const often = count === undefined ? `${used} used` : `${used} of ${count} used`
  const failure = onlyOnFailure === true ? ', only after a failure' : ''
  return `${often}, ${nextWords(allowance)}${failure}`
}

function nextWords({ nextCosts, left }: AllowanceNow): string {
  if (nextCosts === 'notKnown') return 'what the next one costs is not known: ask'
  if (nextCosts === 'notAllowed') return 'no further one is allowed'
  if (nextCosts.laps === 0) return left === undefined ? 'free' : `${left} left`
  return `the next one costs ${lapsWords(nextCosts.laps)}`
}

export function fitted(of: string): ToRecord {
  const { part, position } = PART[of as Of]
  const word = `${part} fitted`
  if (of === 'cars') return { kind: 'carExchanged.1', body: { car: part }, word: 'Car exchanged' }
  return { kind: 'partFitted.1', body: { position, part, allowance: of }, word }
}
