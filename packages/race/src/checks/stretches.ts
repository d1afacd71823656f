/** Stretches of meeting time: half-open, from `fromAt` to before `toAt`. */
export interface Stretch {
  readonly fromAt: number
  readonly toAt: number
}

/** What is left of a stretch without the holes, which may overlap and come in any order. Never an empty piece. */
export function cutOut(stretch: Stretch, holes: readonly Stretch[]): readonly Stretch[] {
  let left: Stretch[] = stretch.toAt > stretch.fromAt ? [stretch] : []
  for (const hole of holes) {
    if (hole.toAt <= stretch.fromAt || hole.fromAt >= stretch.toAt) continue
    const rest: Stretch[] = []
    for (const { fromAt, toAt } of left) {
      const before = { fromAt, toAt: Math.min(toAt, hole.fromAt) }
      const after = { fromAt: Math.max(fromAt, hole.toAt), toAt }
      if (before.toAt > before.fromAt) rest.push(before)
      if (after.toAt > after.fromAt) rest.push(after)
    }
    left = rest
  }
  return left
}

export function lengthOf(stretches: readonly Stretch[]): number {
  return stretches.reduce((sum, { fromAt, toAt }) => sum + toAt - fromAt, 0)
}
