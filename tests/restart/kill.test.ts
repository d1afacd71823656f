/**
 * The server is killed in the middle of a running meeting and started again.
 *
 * R1  Countdowns are right on every screen, old and new, to within 100 ms.
 * R2  Presses that were under way, or were made while the server was gone, are saved, once.
 */
import { expect, it } from 'vitest'
import { killAgainAndAgain } from './kills.ts'

/** How long after a press the server is killed: before it was read, in the middle, after it was answered. */
const KILLED_AFTER_MS = [0, 1, 2, 5, 20]

it(
  'R1, R2: goes on as if nothing had been, with nothing lost or twice',
  { timeout: 120_000 },
  async () => {
    const { countdownOffMs, ...found } = await killAgainAndAgain(KILLED_AFTER_MS)
    expect(found).toEqual({
      // Eight entries are the race; five times the wall presses twice and the phone once: 8 + 5 × 3.
      acknowledged: 23,
      ...{ lost: 0, gaps: 0, twice: 0, unsent: 0 },
      agreed: true,
      incidents: 5,
    })
    expect(countdownOffMs).toBeLessThanOrEqual(100)
  },
)
