import { driversWho } from '../bench.ts'
import type { Check } from '../case.ts'
import { durationInWords, shareInWords } from '../in-words.ts'
import { leastAndMost, SENSES, whileItLasts } from './least-and-most.ts'
import { shareDown, shareUp } from './shares.ts'

/**
 * The share is that of the race clock of all segments, and is judged as time, so that a second too much is not
 * rounded away. Nothing where a segment is counted in laps: how long the race is, is not known then.
 */
export const drivingShare: Check<'drivingShare'> = {
  axis: 'meeting',
  limits: ({ who, atLeast, atMost, longerThanMs }, bench) => {
    const { raceMs, timeline } = bench
    const isTimed = raceMs > 0 && timeline.segments.every(({ lengthMs }) => lengthMs !== undefined)
    if (!isTimed || raceMs <= (longerThanMs ?? 0)) return []
    return leastAndMost('Share of the race,', { atLeast, atMost }, (sense, share) => {
      const limit = sense === 'atLeast' ? shareUp(raceMs, share) : shareDown(raceMs, share)
      return driversWho(bench, who).map((driver) => ({
        sense,
        unit: 'ms',
        limit,
        value: driver.drivenMs,
        people: [driver.id],
        spans: driver.drivingIds,
        ...whileItLasts(sense),
        says: () =>
          `${driver.name} drives ${durationInWords(driver.drivenMs)}, ${SENSES[sense]} ${shareInWords(share)} of the race, ${durationInWords(limit)}.`,
      }))
    })
  },
}
