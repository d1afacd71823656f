/** How much of each, at length and as `npm test` runs it. */
import { seeds } from '../seeds.ts'
import type { Fault } from './fault.ts'
import type { Load } from './load.ts'
import type { Soak } from './soak.ts'

export interface Options {
  readonly load: Load
  readonly soak: Soak
  readonly fault: Fault
}

export const LONG: Options = {
  load: { devices: 50, presses: 20, seconds: 60 },
  soak: { seconds: 1_800, speed: 60 },
  fault: { cuts: 200, kills: 20, seed: Date.now() % 1_000_000 },
}

export const SHORT: Options = {
  load: { devices: 10, presses: 20, seconds: 5 },
  soak: { seconds: 20, speed: 60 },
  fault: { cuts: 5, kills: 1, seed: seeds.at(-1) ?? 0 },
}
