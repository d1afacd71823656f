/** A large search may need more than a WebAssembly memory holds. */

/** What it comes to where memory ran out: the solver aborts, or is refused what it asks for. */
export function inMemory<T>(work: () => T, otherwise: T): T {
  try {
    return work()
  } catch (error) {
    if (!isOutOfMemory(error)) throw error
    return otherwise
  }
}

function isOutOfMemory(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  return (
    error.name === 'RuntimeError' || (error.name === 'RangeError' && /memory/i.test(error.message))
  )
}
