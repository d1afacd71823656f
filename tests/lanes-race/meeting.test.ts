/**
 * A whole meeting on fixed lanes, from the draw to the result, as two race directors rule it.
 *
 * L1  One press after the draw gives every segment its lane, and posts, plan and people follow.
 * L2  The lane change is there by itself: lanes, who drives, who marshals, two countdowns, the light test.
 * L3  In a segment sat out nobody drives, whoever holds the controller, and the team marshals.
 * L4  What race control does to the programme tells each person what changed, and who is no longer there.
 * L5  What counts of a segment run again is as it was ruled; limits are cut where the race was.
 * L6  Segments are added in sections, and gaps mean nothing before every team has had every lane.
 */
import { afterAll, afterEach, describe, it } from 'vitest'
import { Race } from '../scripted-race.ts'
import { theDraw, thePlanAfterIt, twentyMinutesLate } from './before-the-start.ts'
import { car, crew, rulesOf } from './documents.ts'
import { firstLanes, runAgain, satOut } from './first-half.ts'
import { beforeDraw } from './plans.ts'
import { firstDark, fiveLaps, secondDark, tenMinutesAtTheEnd } from './second-half.ts'
import { judged, theResult } from './the-result.ts'
import { IN_POINTS, SUMMED } from './variants.ts'

const TIME_MS = 120_000

/** The second is raced on the server of the first. */
let race: Race | undefined
afterEach(() => race?.leave())
afterAll(() => race?.close())

describe('a meeting on fixed lanes', () => {
  it.for([
    { when: 'the sum decides, and laps of a stopped running are lost', variant: SUMMED },
    { when: 'points a stage decide, and its driving is lost', variant: IN_POINTS },
  ])('L1–L6 $when', { timeout: TIME_MS }, async ({ variant }) => {
    const documents = { rules: rulesOf(variant.also), crew, car, plan: beforeDraw }
    const name = 'Eight twenties at the Tide Mill'
    race = await Race.open({ name, documents, adoptedAt: -3_000 }, race)
    await theDraw(race)
    await thePlanAfterIt(race)
    await twentyMinutesLate(race)
    await firstLanes(race)
    await satOut(race)
    await runAgain(race, variant)
    await firstDark(race)
    await fiveLaps(race, variant)
    await secondDark(race)
    await tenMinutesAtTheEnd(race, variant)
    await theResult(race, variant)
    judged(await race.state(), variant)
  })
})
