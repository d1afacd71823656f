/** Chance that can be had again: mulberry32 (Tommy Ettinger, public domain), thirty-two bits of state from a seed. */
export interface Chance {
  /** From 0 to before 1. */
  readonly next: () => number
  /** A whole number, both ends included. */
  readonly between: (least: number, most: number) => number
}

export function chanceOf(seed: number): Chance {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  return { next, between: (least, most) => least + Math.floor(next() * (most - least + 1)) }
}
