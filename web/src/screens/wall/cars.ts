/** The car and the spare: how long each ran, and the exchange of one for the other. */
import { counted, allowances, runningTimes, type AllowanceNow, type State } from '@pitlamp/race'
import type { Tile } from '../../parts/shown.ts'
import { hoursMinutes } from '../../parts/time.ts'
import type { ToRecord } from './to-record.ts'

const SPARE = 'Spare car'
const MINUTE_MS = 60_000

export interface CarShown {
  readonly car: string
  /** `on track, 1:12 run`, `0:45 run` */
  readonly words: string
  readonly parts: readonly { readonly id: string; readonly words: string }[]
}

/** Hours and minutes: what is worn is not worn by the second. */
export function carsShown(state: State, now: number): readonly CarShown[] {
  return runningTimes(state, now).map(({ car, runningMs, isOnTrack, parts }) => ({
    car,
    words: `${isOnTrack ? 'on track, ' : ''}${ran(runningMs)}`,
    parts: parts
      .filter(({ isFitted }) => isFitted)
      .map(({ position, part, runningMs: ms }) => ({
        id: `${position} ${part}`,
        words: `${position}: ${part}, ${ran(ms)}`,
      })),
  }))
}

function ran(ms: number): string {
  return `${hoursMinutes(Math.floor(ms / MINUTE_MS) * MINUTE_MS)} run`
}

/** Every other car named so far, or the spare one, with what the rules say of another where they count cars. */
export function exchangeTiles(state: State, now: number): readonly Tile[] {
  const others = runningTimes(state, now).filter(({ isOnTrack }) => !isOnTrack)
  const hint = hintOf(allowances(state, now).find(({ of }) => of === 'cars'))
  if (others.length > 0) return others.map(({ car }) => tile(car, hint))
  return [tile(SPARE, hint)]
}

function tile(car: string, hint: string | undefined): Tile {
  return hint === undefined ? { id: car, word: car } : { id: car, word: car, hint }
}

function hintOf(allowed: AllowanceNow | undefined): string | undefined {
  if (!allowed) return undefined
  const { nextCosts } = allowed
  if (nextCosts === 'notAllowed') return 'not allowed'
  if (nextCosts === 'notKnown') return 'what it costs is not known'
  return nextCosts.laps === 0 ? undefined : `costs ${counted(nextCosts.laps, 'lap')}`
}

export function carExchanged(car: string): ToRecord {
  return { kind: 'carExchanged.1', body: { car }, word: `${car} on track` }
}
