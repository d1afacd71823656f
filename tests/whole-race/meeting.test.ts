/**
 * A whole race, from the first green to the released car, once for each way in which a track call may stop the clocks.
 *
 * M1  Stint times, segment clocks, stop times, repair times and their limits are what they are by hand.
 * M2  One press seen by two devices counts once; the wall's time holds.
 * M3  What an offline tablet pressed counts from when it was pressed, once it has come.
 * M4  A phone that has taken the wall records as the wall, until it is asked back.
 * M5  What was said of penalties and laps stands in the standing, in laps and sections.
 * M6  The rules judge the race as it was, and every screen shows the same.
 */
import { afterEach, describe, it } from 'vitest'
import { Race } from '../scripted-race.ts'
import { car, crew, plan, rulesOf } from './documents.ts'
import { firstSegment } from './first-segment.ts'
import { parcFerme, secondSegment, theLateEntry } from './second-segment.ts'
import { afterwards, judged, thirdSegment } from './to-the-end.ts'
import { HOLDS, RUNS } from './variants.ts'

const TIME_MS = 120_000

let race: Race
afterEach(() => race.close())

describe('a whole race', () => {
  it.for([
    { when: 'holds every clock', variant: HOLDS },
    { when: 'holds none, and the minimum starts again', variant: RUNS },
  ])('M1–M6 a track call $when', { timeout: TIME_MS }, async ({ variant }) => {
    race = await Race.open({
      name: 'Three twenties at the Bell Foundry',
      documents: { rules: rulesOf(variant.policies), crew, car, plan },
    })
    await firstSegment(race, variant)
    await parcFerme(race, variant)
    const late = await secondSegment(race, variant)
    await theLateEntry(race, variant, late)
    await thirdSegment(race)
    await afterwards(race)
    judged(await race.state(), variant)
  })
})
