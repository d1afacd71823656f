/** What a device says of the server's clock: how far its own reckoning is ahead, and how sure it is. */
export interface Reckoning {
  readonly differsMs: number
  readonly boundMs: number
}

/** The lower median by difference; undefined while nobody said anything. */
export function middleOf(reckonings: readonly Reckoning[]): Reckoning | undefined {
  const sorted = [...reckonings].sort((a, b) => a.differsMs - b.differsMs)
  return sorted[Math.floor((sorted.length - 1) / 2)]
}
