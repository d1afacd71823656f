import { driversWho } from '../bench.ts'
import type { Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { leastAndMost, SENSES, whileItLasts } from './least-and-most.ts'
import { cutProRata } from './pro-rata.ts'

/**
 * Who is in the crew to drive and never does has driven 0: that is for the number of drivers to say. In a race made
 * shorter the limits are cut where the rules say so.
 */
export const drivingTime: Check<'drivingTime'> = {
  axis: 'meeting',
  limits: ({ who, atLeastMs, atMostMs }, bench) =>
    leastAndMost('Each drives', { atLeast: atLeastMs, atMost: atMostMs }, (sense, asWritten) => {
      const { limit, words } = cutProRata(bench, sense, asWritten)
      return driversWho(bench, who).map((driver) => ({
        sense,
        unit: 'ms',
        limit,
        value: driver.drivenMs,
        people: [driver.id],
        spans: driver.drivingIds,
        ...whileItLasts(sense),
        says: () =>
          `${driver.name} drives ${durationInWords(driver.drivenMs)}, ${SENSES[sense]} ${durationInWords(limit)}${words}.`,
      }))
    }),
}
