/** What one screen may ask at once: far above what presses and probes need, far below what could hold up the others. */
const BURST = 400
const A_SECOND = 200

/** A bucket that fills with time; false when it is empty. */
export function allowance(now: () => number = () => performance.now()): () => boolean {
  let left = BURST
  let filledAt = now()
  return () => {
    const at = now()
    left = Math.min(BURST, left + ((at - filledAt) / 1000) * A_SECOND)
    filledAt = at
    if (left < 1) return false
    left -= 1
    return true
  }
}
