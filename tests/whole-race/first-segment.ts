/** Two devices see one press, the hall's clock is read, and a wing that must be mended is, in a stop with a call in it. */
import { compulsoryRepairs, faultClocks, segmentClock, stintClock } from '@pitlamp/race'
import { expect } from 'vitest'
import { PELL, RUNA, SORREL } from './documents.ts'
import { at, type Race } from '../scripted-race.ts'
import { lastVerdict, limitLeft, stopAt, swap } from './reading.ts'
import type { Variant } from './variants.ts'

export async function firstSegment(race: Race, variant: Variant): Promise<void> {
  const wing = await untilTheStop(race, variant)
  await theStop(race, variant, wing)
  await race.say(variant.ends[0], [race.wall, 'segmentEnd.1', { segment: 's1' }])
}

/** @returns the wing's fault */
async function untilTheStop(race: Race, { hallToGo, right }: Variant): Promise<string> {
  const { wall, captains, phone } = race
  const moves = [
    { person: SORREL, duty: 'post' as const, post: '4' },
    { person: PELL, duty: 'wall' as const },
    { person: RUNA, duty: 'controller' as const },
  ]
  await race.say(-60, [wall, 'handover.1', { moves }])
  await race.say(0, [wall, 'green.1', { segment: 's1' }])

  // M2: the captain sees it two and three seconds later.
  const call = await race.say(120, [wall, 'trackCall.1', {}])
  const witness = await race.say(122, [captains, 'trackCall.1', {}])
  await race.say(160, [wall, 'powerOn.1', {}])
  await race.say(163, [captains, 'powerOn.1', {}])
  const once = await race.state()
  expect(once.raceControl.interruptions).toMatchObject([
    { entry: call.id, fromAt: at(120), toAt: at(160) },
  ])
  expect(once.record.log.find(({ entry }) => entry.id === witness.id)).toMatchObject({
    standing: 'secondWitness',
    witnessOf: call.id,
  })
  expect(once.problems).toEqual([])

  const reading = { segment: 's1', shows: 'toGo', readingMs: hallToGo * 1_000 } as const
  await race.say(300, [captains, 'clockRead.1', reading])
  expect(segmentClock(await race.state(), at(300))?.toGoMs).toBe(hallToGo * 1_000)
  const wing = (await race.say(404, [phone, 'faultNoted.1', { fault: 'Rear wing' }])).id
  const noted = await race.state()
  expect(limitLeft(noted, 430)).toBe(right.limitLeft[0])
  // The stop planned for half time comes before the limit ends.
  expect(compulsoryRepairs(noted, at(430))).toMatchObject([
    { rule: 'wing', clause: '6.5', onlyUnderGreen: true, noChoice: false, costLaps: 1 },
  ])
  await race.say(500, [wall, 'trackCall.1', {}])
  await race.say(530, [wall, 'powerOn.1', {}])

  return wing
}

/** A track call inside it; the wing is mended before and after. */
async function theStop(race: Race, { leaves, right }: Variant, wing: string): Promise<void> {
  const { wall } = race
  await race.say(640, [wall, 'stopIn.1', { moment: 'stopped', planned: 's1stop' }])
  await race.say(645, [wall, 'repairStarted.1', { fault: wing }])
  const stopped = await race.state()
  expect(segmentClock(stopped, at(640))?.elapsedMs).toBe(right.clockAt640 * 1_000)
  expect(stopAt(stopped, 650)).toEqual({ ...right.stopAt650, mandatory: true, running: true })
  await race.say(660, [wall, 'trackCall.1', {}])
  const called = await race.state()
  expect(stopAt(called, 670)).toEqual({ ...right.stopAt670, mandatory: true, running: false })
  // Hands are off the car: 645 to 660 is all that has been mended.
  expect(faultClocks(called, at(670))[0]).toMatchObject({ repairMs: 15_000, paused: 'byRule' })
  await race.say(680, [wall, 'powerOn.1', {}])
  const on = await race.state()
  expect(stopAt(on, 690)).toEqual({ ...right.stopAt690, mandatory: true, running: true })
  expect(limitLeft(on, 699)).toBe(right.limitLeft[1])
  await race.say(700, [wall, 'repairFinished.1', { fault: wing }])
  const mended = await race.state()
  // 645 to 660 and 680 to 700.
  expect(faultClocks(mended, at(710))[0]).toMatchObject({
    repairMs: 35_000,
    runningWithMs: right.wingRunWith * 1_000,
  })
  expect(compulsoryRepairs(mended, at(710))).toEqual([])
  expect(stintClock(mended, at(leaves))).toMatchObject({
    person: RUNA,
    drivenMs: right.stint * 1_000,
  })
  const work = [{ what: 'Rear wing', fault: wing, done: true }]
  await race.say(leaves, [wall, 'stopOut.1', { moment: 'leaving', work, moves: swap(PELL, RUNA) }])
  // Both left five seconds after the minimum: 720 and 740.
  expect(lastVerdict(await race.state())).toMatchObject({ verdict: 'late', byMs: 5_000, costs: [] })
}
