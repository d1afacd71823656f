/** Where lines that were taken out of a list stood, so that they are shown there and come back there. */
export interface Gone<T> {
  readonly line: T
  /** Its place in the list at the moment it was taken out. */
  readonly index: number
}

export interface ShownLine<T> {
  readonly line: T
  readonly isGone: boolean
}

/** The list with what is gone in its place; the last one taken out is put in first. */
export function shownWith<T>(
  lines: readonly T[],
  gone: readonly Gone<T>[],
): readonly ShownLine<T>[] {
  const shown: ShownLine<T>[] = lines.map((line) => ({ line, isGone: false }))
  for (const { line, index } of [...gone].reverse()) shown.splice(index, 0, { line, isGone: true })
  return shown
}

/** The place among the lines still there at which this one comes back. */
export function backAt<T extends { readonly id: string }>(
  shown: readonly ShownLine<T>[],
  id: string,
): number {
  const at = shown.findIndex(({ line, isGone }) => isGone && line.id === id)
  return shown.slice(0, Math.max(0, at)).filter(({ isGone }) => !isGone).length
}
