import loadHighs from 'highs'
import { expect, test } from 'vitest'
import { plan } from '../plan.ts'
import { driver, GREEN_AT, minutes, problem, segment } from '../testing/make.ts'

const solver = await loadHighs()

test('gives way where a lane change that counts makes it longer than the race', () => {
  const answer = plan(
    problem({
      people: [driver('ada')],
      segments: [
        segment(1, 30),
        segment(1, 30, { id: 'two', after: 'laneChange', startsAt: GREEN_AT + minutes(35) }),
      ],
      counting: { stops: true, laneChanges: true, changeWithOneself: false },
      wishes: [{ id: 'w', kind: 'noMoreThan', person: 'ada', laps: 3, atMostMs: minutes(60) }],
    }),
    { solver },
  )
  if (answer.kind !== 'planned') throw new Error(`It is ${answer.kind}.`)
  // 30 + 5 + 30 min at the controller; 360 laps, less what the wish is worth.
  expect(answer.worthLaps).toBeCloseTo(357, 6)
})
