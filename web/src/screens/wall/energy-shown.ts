/** What is left on the load, read or estimated, and the presses that say so. */
import { energyNow, inForce, ruleValue, type EnergyNow, type State } from '@pitlamp/race'
import { lapsWords } from '../../parts/penalty-words.ts'
import type { EnergyShown, Tile } from '../../parts/shown.ts'
import { clockTime, countdown } from '../../parts/time.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

const MINUTE_MS = 60_000
const SINCE = { read: 'read', filled: 'filled', start: 'the start' } as const
const AT_EMPTY = {
  stands: 'the car stands',
  slows: 'the car slows',
  penalty: 'it costs a penalty',
} as const

/** The rules have a load, or somebody read one. */
export function hasEnergy(state: State, now: number): boolean {
  const rules = inForce(state, 'rules', now)?.rules ?? []
  return ruleValue(rules, 'energy') !== undefined || state.car.energy.length > 0
}

/** Undefined where the car runs on no load. */
export function energyShown({ state, now, crew }: Seen): EnergyShown | undefined {
  const load = energyNow(state, now)
  if (!load) return hasEnergy(state, now) ? { words: 'Energy: not read yet' } : undefined
  if (!load.empty && load.timeLeftMs === undefined) return withoutPace(load, crew.timeZone)
  const { lapsLeft, timeLeftMs, atEmpty, empty, from } = load
  const left = [
    ...(lapsLeft === undefined ? [] : [lapsWords(lapsLeft)]),
    ...(timeLeftMs === undefined ? [] : [countdown(timeLeftMs)]),
  ].join(', ')
  const at = clockTime(load.since, crew.timeZone)
  const isRead = load.basis === 'read'
  const ends = !empty || atEmpty === undefined ? '' : `, ${AT_EMPTY[atEmpty]}`
  return {
    words: empty ? `Energy: empty${ends}` : `Energy: ${isRead ? '' : 'about '}${left}`,
    basis: isRead ? `${SINCE[from]} ${at}` : `estimated since ${SINCE[from]} ${at}`,
  }
}

/** Nobody can tell then how many laps were run since. */
function withoutPace({ lapsLeft, lapsThen = 0, since, from }: EnergyNow, timeZone: string) {
  const at = clockTime(since, timeZone)
  const left = `${lapsWords(lapsLeft ?? lapsThen)} left on this load`
  return {
    words: `Energy: ${left}${lapsLeft === undefined ? ` at ${at}` : ''}`,
    basis: `${SINCE[from]} ${at}; time not known: no pace`,
  }
}

export const FILLED: ToRecord = { kind: 'energy.1', body: { what: 'filled' }, word: 'Filled' }

/** The number typed first says how much: laps or minutes. */
export function energyTiles(amount: number | undefined): readonly Tile[] {
  const off = amount === undefined
  const number = amount ?? '…'
  const laps = amount === undefined ? '… laps' : lapsWords(amount)
  return [
    { id: 'laps', word: `${laps} left`, hint: 'as the venue shows it', off },
    { id: 'minutes', word: `${number} min left`, hint: 'as the venue shows it', off },
  ]
}

export function energyRead(of: string, amount: number): ToRecord {
  const left = of === 'laps' ? { lapsLeft: amount } : { timeLeftMs: amount * MINUTE_MS }
  return { kind: 'energy.1', body: { what: 'read', ...left }, word: 'Energy' }
}
