/** The last segment, the result and its protest time, and what the rules make of the whole race. */
import { afterTheFlag, phaseOf, standing, type State } from '@pitlamp/race'
import { expect } from 'vitest'
import { PELL, RUNA, SORREL } from './documents.ts'
import { at, type Race } from '../scripted-race.ts'
import { lastVerdict, ofRule, raceFindings, stopAt, swap } from './reading.ts'
import type { Variant } from './variants.ts'

export async function thirdSegment(race: Race): Promise<void> {
  const { wall } = race
  const moves = [
    { person: PELL, duty: 'post' as const, post: '4' },
    { person: RUNA, duty: 'wall' as const },
  ]
  await race.say(3_980, [wall, 'handover.1', { moves }])
  await race.say(4_000, [wall, 'green.1', { segment: 's3' }])
  await race.say(4_590, [wall, 'stopIn.1', { moment: 'stopped', planned: 's3stop' }])
  // 60 − 30; 4,590 + 60 + 2.
  expect(stopAt(await race.state(), 4_620)).toEqual({
    ...{ remaining: 30, goAt: 4_652, mandatory: true, running: true },
  })
  await race.say(4_656, [wall, 'stopOut.1', { moment: 'leaving', moves: swap(RUNA, SORREL) }])
  expect(lastVerdict(await race.state())).toMatchObject({ verdict: 'late', byMs: 6_000 })
  await race.say(5_200, [wall, 'segmentEnd.1', { segment: 's3' }])
  expect(phaseOf(await race.state(), at(5_210)).phase).toBe('finished')
}

export async function afterwards(race: Race): Promise<void> {
  const { wall, captains } = race
  await race.say(5_260, [captains, 'scrutineering.1', { when: 'final', verdict: 'passed' }])
  const weight = { quantity: 'Weight', unit: 'g', valueMilli: 92_400 } as const
  await race.say(5_300, [wall, 'measured.1', weight])
  const lines = [
    { place: 1, entrant: 'Tidewater', laps: 412, section: 35 },
    { place: 2, entrant: 'Lantern Row', laps: 405, section: 20, ours: true },
  ]
  const result = { scope: 'whole', lines } as const
  await race.say(5_400, [captains, 'classification.1', { ...result, standing: 'provisional' }])
  await race.say(5_450, [captains, 'lapsCorrected.1', { laps: 1, sections: 35 }])
  const state = await race.state()
  // 405 and 20 of 50, 1 and 35 more: 406 and 55 are 407 and 5. 412.35 − 407.05 = 5.30.
  expect(standing(state, at(5_460))).toMatchObject({
    shown: { laps: 405, sections: 20 },
    ours: { laps: 407, sections: 5 },
    since: { penaltyLaps: 0, correctedLaps: 1, correctedSections: 35 },
    ahead: { entrant: 'Tidewater', gap: { laps: 5, sections: 30 } },
  })
  // Ten minutes from 5,400.
  expect(afterTheFlag(state, at(5_700))).toMatchObject({
    next: 'protestTime',
    steps: [
      { what: 'scrutineering', state: 'done' },
      { what: 'weighing', state: 'done', valueMilli: 92_400 },
      { what: 'provisionalResult', state: 'done' },
      { what: 'protestTime', state: 'counting', until: at(6_000) },
      { what: 'officialResult', state: 'wanted' },
      { what: 'released', state: 'wanted' },
    ],
  })
  await race.say(6_010, [captains, 'classification.1', { ...result, standing: 'official' }])
  await race.say(6_030, [wall, 'released.1', {}])
  expect(afterTheFlag(await race.state(), at(6_040))?.next).toBeUndefined()
}

/** M6 */
export function judged(state: State, { right, policies }: Variant): void {
  const now = at(6_100)
  expect(state.problems).toEqual([])
  const found = raceFindings(state, now)
  // 65, 57 and 66 s of 60: the second is three short.
  expect(ofRule(found, 'minimum')).toMatchObject([
    { verdict: 'broken', limit: 60_000, value: 57_000, margin: -3_000 },
  ])
  expect(ofRule(found, 'stops')).toMatchObject([{ verdict: 'kept', limit: 1, value: 1 }])
  const { Runa, Pell, Sorrel } = right.driven
  const most = Math.max(Runa, Pell, Sorrel)
  // At most 1,250 s each.
  expect(ofRule(found, 'driving')).toMatchObject([
    {
      verdict: policies.driving === 'holds' ? 'kept' : 'broken',
      people: [policies.driving === 'holds' ? SORREL : RUNA],
      value: most * 1_000,
      margin: policies.driving === 'holds' ? 16_000 : -39_000,
    },
  ])
  // The three add up to three segments, without the five seconds that the hall's clock was ahead.
  expect(Runa + Pell + Sorrel).toBe(3_600 - 5)
}
