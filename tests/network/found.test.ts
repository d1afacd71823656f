/** Schedules that failed once, as the shrinking left them. */
import { describe, expect, it } from 'vitest'
import { play } from './simulation.ts'

describe('found by fuzzing', () => {
  it('a push on top of another history hid at the next connection that it was another', async () => {
    await expect(
      play({
        turns: [
          { do: 'connect', screen: 0 },
          { do: 'connect', screen: 1 },
          { do: 'connect', screen: 2 },
          { do: 'calm' },
          { do: 'press', screen: 1, kind: 'note' },
          { do: 'deliver', pick: 0 },
          { do: 'putBack' },
          { do: 'press', screen: 2, kind: 'note' },
          { do: 'connect', screen: 2 },
          { do: 'calm' },
          { do: 'connect', screen: 1 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'press', screen: 1, kind: 'note' },
          { do: 'deliver', pick: 1 },
          { do: 'deliver', pick: 10 },
          { do: 'connect', screen: 1 },
          { do: 'deliver', pick: 0 },
          { do: 'calm' },
        ],
        endsWith: 'connecting',
      }),
    ).resolves.toBeUndefined()
  })

  it('a push gave an entry a second place in the log of a screen that had not noticed yet', async () => {
    await expect(
      play({
        turns: [
          { do: 'connect', screen: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'connect', screen: 1 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'connect', screen: 2 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'press', screen: 0, kind: 'note' },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'disconnect', screen: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'connect', screen: 1 },
          { do: 'press', screen: 1, kind: 'longNote' },
          { do: 'deliver', pick: 0 },
          { do: 'putBack' },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'deliver', pick: 0 },
          { do: 'press', screen: 0, kind: 'tooLong' },
          { do: 'giveUpWaiting', screen: 0 },
          { do: 'press', screen: 0, kind: 'note' },
          { do: 'deliver', pick: 1 },
        ],
        endsWith: 'connecting',
      }),
    ).resolves.toBeUndefined()
  })
})
