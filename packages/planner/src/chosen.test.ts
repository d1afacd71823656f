import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { plan } from './plan.ts'
import { driver, minutes, problem, segment } from './testing/make.ts'

const solver = await loadHighs()

it('claims no more than how far a long race can be from the best', () => {
  const answer = plan(
    problem({
      people: [driver('ada', { lapMs: 9_000 }), driver('ben')],
      segments: [segment(1, 420, { gridMs: minutes(10) })],
      rules: [{ id: 'turns', kind: 'continuousDriving', atMostMs: minutes(110) }],
      stop: { standsMs: 0, costsMs: 60_000 },
    }),
    { solver },
  )
  if (answer.kind !== 'planned') throw new Error(`It is ${answer.kind}.`)
  expect(answer.proof).toBe('within')
  expect(answer.gapLaps).toBeCloseTo(answer.boundLaps - answer.worthLaps, 9)
  // Ada drives 110 min three times and 60 once, Ben ten minutes in between: six stops, of which each loses three.
  // 387 min ÷ 9 s + 27 min ÷ 10 s = 2580 + 162 = 2742, and nothing on the grid is better.
  expect(answer.worthLaps).toBeLessThanOrEqual(2_742.001)
  expect(answer.worthLaps).toBeGreaterThan(2_742 - 20)
  expect(answer.boundLaps).toBeGreaterThanOrEqual(2_742 - 0.001)
  expect(answer.stops.every(({ atMs }) => atMs % minutes(10) === 0)).toBe(true)
}, 120_000)
