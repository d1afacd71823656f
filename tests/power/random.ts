/** The same numbers for the same seed, so that a failure can be run again. */
export interface Random {
  /** A whole number from 0 up to, not including, `limit`. */
  readonly below: (limit: number) => number
}

/** Park and Miller's minimal standard generator (CACM 31, 1988, 1192–1201). */
export function newRandom(seed: number): Random {
  let value = (seed % 2_147_483_646) + 1
  return {
    below: (limit) => {
      value = (value * 48_271) % 2_147_483_647
      return Math.floor((value / 2_147_483_647) * limit)
    },
  }
}
