/** Any mix of rules: what is offered keeps them all by the checks that judge every plan, which know no planner. */
import { judge, planTimeline, withDrafts, emptyState, type Plan } from '@pitlamp/race'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { arbitraryMeeting } from './testing/arbitrary-meeting.ts'
import { meantOf, MINUTE, saidOf, type Given } from './testing/meant.ts'

const RUNS = 30

test('a plan of a random meeting breaks no rule, and where there is none it is said what collides', async () => {
  const counts = { worked: 0, impossible: 0, other: 0 }
  await fc.assert(
    fc.asyncProperty(arbitraryMeeting, fc.boolean(), async (given, isChosen) => {
      const stops = isChosen ? { stopEveryMs: 20 * MINUTE } : { changeEveryMs: 20 * MINUTE }
      const [said] = await saidOf(meantOf(given), stops)
      if (said?.kind === 'worked') {
        counts.worked += 1
        expect(brokenIn(given, said.plan)).toEqual([])
      } else if (said?.kind === 'impossible') {
        counts.impossible += 1
        expect(said.giveUp.length + said.people.length).toBeGreaterThan(0)
      } else {
        counts.other += 1
        expect(said).toMatchObject({ kind: 'notDone', why: 'faulty' })
      }
    }),
    { numRuns: RUNS },
  )
  console.log(`seed ${process.env.FC_SEED ?? 'of this run'}: ${JSON.stringify(counts)}`)
  expect(counts.worked).toBeGreaterThan(RUNS / 6)
  expect(counts.impossible).toBeGreaterThan(0)
}, 120_000)

function brokenIn(given: Given, plan: Plan): readonly string[] {
  const state = withDrafts(emptyState, { ...meantOf(given).drafts, plan })
  return judge(state, planTimeline(state, 0), 0)
    .filter(({ verdict }) => verdict === 'broken')
    .map(({ sentence }) => sentence)
}
