/** How much of each, at length and as `npm test` runs it. */
import type { Processes } from '../scale/kills.ts'
import { seeds } from '../seeds.ts'
import type { Fault } from './fault.ts'
import type { Load } from './load.ts'
import type { Soak } from './soak.ts'

export interface Options {
  readonly load: Load
  readonly soak: Soak
  readonly fault: Fault
  readonly processes: Processes
}

export const LONG: Options = {
  load: { devices: 50, presses: 20, seconds: 60 },
  soak: { seconds: 1_800, speed: 60 },
  fault: { cuts: 200, kills: 20, seed: Date.now() % 1_000_000 },
  processes: { devices: 50, presses: 20, kills: 10, rounds: 2, seed: Date.now() % 1_000_000 },
}

export const SHORT: Options = {
  load: { devices: 10, presses: 20, seconds: 5 },
  soak: { seconds: 20, speed: 60 },
  fault: { cuts: 5, kills: 1, seed: seeds.at(-1) ?? 0 },
  processes: { devices: 12, presses: 15, kills: 2, rounds: 1, seed: seeds.at(-1) ?? 0 },
}
