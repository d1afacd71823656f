/** How long each car ran, and each part on it, as far as this meeting goes. */
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { lapping } from '../time/lapping.ts'

export interface CarRunning {
  /** As the exchange names it; the first as the car's document calls it. */
  readonly car: string
  readonly runningMs: number
  readonly isOnTrack: boolean
  /** In the order in which they were first fitted. */
  readonly parts: readonly PartRunning[]
}

export interface PartRunning {
  readonly position: string
  readonly part: string
  readonly runningMs: number
  readonly isFitted: boolean
}

/** A car or part without a name, before anybody gave it one. */
const NO_NAME = 'Car'

/**
 * In the order in which they first ran. Time in which the car laps goes to the car entered or last put in by an
 * exchange, and to what is fitted to it; what is fitted stays on its car, and runs again with it. Names are compared
 * without regard to capitals.
 */
export function runningTimes(state: State, now: number): readonly CarRunning[] {
  const first = inForce(state, 'car', now)?.name ?? NO_NAME
  const cars: CarDraft[] = [newCar(first)]
  let [current] = cars as [CarDraft]
  let from = -Infinity
  for (const event of eventsOf(state, now)) {
    run(current, lappedMs(state, from, event.at))
    from = event.at
    if ('car' in event) {
      const found = cars.find((one) => isSame(one.car, event.car))
      current = found ?? newCar(event.car)
      if (!found) cars.push(current)
    } else if (event.fitted) fit(current, event)
    else takeOff(current, event)
  }
  run(current, lappedMs(state, from, now))
  return cars.map(({ car, runningMs, parts }) => ({
    ...{ car, runningMs, isOnTrack: cars.find((one) => one.car === car) === current },
    parts: parts.map((part) => ({ ...part })),
  }))
}

interface PartDraft {
  readonly position: string
  readonly part: string
  runningMs: number
  isFitted: boolean
}
interface CarDraft {
  readonly car: string
  runningMs: number
  readonly parts: PartDraft[]
}

type Event =
  | { readonly at: number; readonly car: string }
  | {
      readonly at: number
      readonly position: string
      readonly part: string
      readonly fitted: boolean
    }

/** Exchanges and parts in order of their times, up to `now`. */
function eventsOf(state: State, now: number): readonly Event[] {
  const exchanges = state.car.exchanges.map(({ at, body }): Event => ({ at, car: body.car }))
  const parts = state.car.parts.map(({ at, body, was }): Event => {
    return { at, position: body.position, part: body.part, fitted: was === 'fitted' }
  })
  return [...exchanges, ...parts].filter(({ at }) => at <= now).sort((a, b) => a.at - b.at)
}

function newCar(car: string): CarDraft {
  return { car, runningMs: 0, parts: [] }
}

function lappedMs(state: State, fromAt: number, toAt: number): number {
  return lapping(state, { fromAt, toAt }).reduce((sum, one) => sum + one.toAt - one.fromAt, 0)
}

function run(car: CarDraft, ms: number): void {
  car.runningMs += ms
  for (const part of car.parts) if (part.isFitted) part.runningMs += ms
}

/** Whatever was at that place before comes off. */
function fit(car: CarDraft, { position, part }: Pick<PartDraft, 'position' | 'part'>): void {
  for (const one of car.parts) if (isSame(one.position, position)) one.isFitted = false
  const known = car.parts.find((one) => isSame(one.position, position) && isSame(one.part, part))
  if (known) known.isFitted = true
  else car.parts.push({ position, part, runningMs: 0, isFitted: true })
}

function takeOff(car: CarDraft, { position, part }: Pick<PartDraft, 'position' | 'part'>): void {
  for (const one of car.parts) {
    if (isSame(one.position, position) && isSame(one.part, part)) one.isFitted = false
  }
}

function isSame(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase()
}
