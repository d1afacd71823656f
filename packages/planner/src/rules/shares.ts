/** Whole thousandths of whole milliseconds. */

/** `perMille` thousandths of a whole shared among so many, the fraction dropped. */
export function shareDown(whole: number, perMille: number, among = 1): number {
  const [product, by] = [whole * perMille, 1_000 * among]
  return (product - (product % by)) / by
}

/** The same, rounded up. */
export function shareUp(whole: number, perMille: number, among = 1): number {
  const down = shareDown(whole, perMille, among)
  return down * 1_000 * among === whole * perMille ? down : down + 1
}
