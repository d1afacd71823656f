/** A device, a server's clock and the network between them, for tests of the clock. Seeded, no real time. */
import type { Instants, ProbeSample } from './screen-clock.ts'

/** Park and Miller's generator (1988): the same numbers everywhere. From 0 to below 1. */
export function chance(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1
  const next = () => {
    state = (state * 48_271) % 2_147_483_647
    return (state - 1) / 2_147_483_646
  }
  // The first numbers of small seeds are all small.
  for (let turn = 0; turn < 4; turn += 1) next()
  return next
}

export interface Ways {
  /** One-way delays in ms. */
  readonly upMs: number
  readonly downMs: number
}

const DATE_AT_START = 1_750_000_000_000
/** The device's wall clock is three seconds fast. */
const SERVER_AT_START = DATE_AT_START - 3_000

/** A server whose clock runs faster than the device's by `drift`; local time begins at 0. */
export function device(drift = 0) {
  const serverAt = (localMs: number) => SERVER_AT_START + localMs * (1 + drift)
  return {
    serverAt,
    at: (localMs: number): Instants => ({ localMs, dateMs: DATE_AT_START + localMs }),
    probe: (t0: number, { upMs, downMs }: Ways, epoch = 0): ProbeSample => {
      const t3 = t0 + upMs + downMs
      const served = serverAt(t0 + upMs)
      return { t0, t1: served, t2: served, t3, epoch, dateNow: DATE_AT_START + t3 }
    },
  }
}

/**
 * Delays as a crowded Wi-Fi has them: about 1.5 ms and a tail, every thirtieth frame repeated, and now and
 * then a busy spell of some seconds in which each way takes up to hundreds of milliseconds for itself.
 */
export function wiFi(random: () => number): (localMs: number) => Ways {
  let busyUntilMs = 0
  const tail = (meanMs: number) => {
    let steps = random()
    while (random() < 0.5) steps += 1
    return (meanMs * steps) / 1.5
  }
  const way = (localMs: number) => {
    if (random() < 0.004) busyUntilMs = localMs + 5_000 + tail(15_000)
    const repeatMs = random() < 0.03 ? tail(40) : 0
    return 1.5 + tail(localMs < busyUntilMs ? 60 : 2.5) + repeatMs
  }
  return (localMs) => ({ upMs: way(localMs), downMs: way(localMs) })
}
