/** The same script with its de-slots and contacts moved about, for soak runs: same seed, same race. */
import type { Press, Script } from './script.ts'

const MOVED = new Set(['incident.1', 'note.1'])
const MOST_MS = 90_000

/** Seed 0 is the script as written. Moves stay within ±90 s; order follows the new times. */
export function stirred(script: Script, seed: number): Script {
  if (seed === 0) return script
  const next = lehmer(seed)
  const presses = script.presses.map((press): Press => {
    if (!MOVED.has(press.kind)) return press
    return { ...press, offsetMs: press.offsetMs + Math.round((next() * 2 - 1) * MOST_MS) }
  })
  return { ...script, presses: presses.toSorted((a, b) => a.offsetMs - b.offsetMs) }
}

/** Park and Miller's minimal standard generator (CACM 31, 1988, 1192–1201): plenty for moving incidents about. */
function lehmer(seed: number): () => number {
  let value = (Math.abs(Math.trunc(seed)) % 2_147_483_646) + 1
  return () => {
    value = (value * 48_271) % 2_147_483_647
    return value / 2_147_483_647
  }
}
