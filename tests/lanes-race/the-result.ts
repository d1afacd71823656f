/** The result in sections or in points, who drove how long, and what the rules make of it. */
import { phaseOf, standing, type State } from '@pitlamp/race'
import { expect } from 'vitest'
import { at, type Race } from '../scripted-race.ts'
import { ofRule, raceFindings } from '../whole-race/reading.ts'
import { EDDA, GWEN } from './documents.ts'
import { linesOf } from './laps.ts'
import { places } from './reading.ts'
import { IN_POINTS, SECOND_STAGE, type Variant } from './variants.ts'

export async function theResult(race: Race, variant: Variant): Promise<void> {
  const state = await race.state()
  expect(phaseOf(state, at(12_010)).phase).toBe('finished')
  // L6: now every team has had every lane. 70.30 − 69.45.
  expect(standing(state, at(12_010))).toMatchObject({
    comparable: { is: 'yes', over: 8, through: 8, round: 8 },
    behind: { entrant: 'Salt Mill', gap: { laps: 0, sections: 35 } },
  })
  if (variant === IN_POINTS) {
    const lines = linesOf(SECOND_STAGE)
    const stage = { standing: 'official', scope: 'stage', segment: 's8', lines } as const
    await race.say(12_100, [race.captains, 'classification.1', stage])
  }
  expect(places(await race.state(), 12_200)).toEqual(variant.result)
}

/** L5 */
export function judged(state: State, { gwenDrove }: Variant): void {
  const now = at(12_200)
  expect(state.problems).toEqual([])
  const found = raceFindings(state, now)
  // 8 × 20 min became 150 of 160: 2,000 and 2,560 s become 1,875 and 2,400.
  expect(ofRule(found, 'driving')).toMatchObject([
    {
      ...{ sense: 'atLeast', limit: 1_875_000, value: gwenDrove * 1_000, people: [GWEN] },
      verdict: gwenDrove < 1_875 ? 'broken' : 'kept',
    },
    // The first and the fifth, 1,200 s each.
    { sense: 'atMost', limit: 2_400_000, value: 2_400_000, people: [EDDA], verdict: 'kept' },
  ])
  // Two each, the fourth counted once; two at posts in both sit-outs; every post that of the lane.
  for (const rule of ['each', 'sitOut', 'post']) {
    expect(ofRule(found, rule).map(({ verdict }) => verdict)).not.toContain('broken')
    expect(ofRule(found, rule).length).toBeGreaterThan(0)
  }
}
