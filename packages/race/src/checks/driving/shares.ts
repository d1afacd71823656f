/** Whole thousandths of whole numbers without a fraction in between. */

/** `part` of `of` thousandths, the fraction dropped. `n` shares it among as many; both at least 1. */
export function shareDown(whole: number, perMille: number, among = 1): number {
  const product = whole * perMille
  const by = 1_000 * among
  return (product - (product % by)) / by
}

/** The same, rounded up. */
export function shareUp(whole: number, perMille: number, among = 1): number {
  const down = shareDown(whole, perMille, among)
  return down * 1_000 * among === whole * perMille ? down : down + 1
}
