/** Of the windows a stop lies in it serves the one that closes first: so as many are served as can be. */
export function firstToClose<W extends { readonly toMs: number }>(
  windows: readonly W[],
): W | undefined {
  const [first, ...others] = windows
  return first && others.reduce((best, one) => (one.toMs < best.toMs ? one : best), first)
}
