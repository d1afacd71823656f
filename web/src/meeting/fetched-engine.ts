const FETCH_AGAIN_REAL_MS = 2_000

/** Where the server went away in the middle of loading it is asked for again until it comes. */
export async function fetchedEngine() {
  for (;;) {
    const engine = await import('./engine.ts').catch(() => undefined)
    if (engine) return engine
    await new Promise((resolve) => setTimeout(resolve, FETCH_AGAIN_REAL_MS))
  }
}
