import loadHighs from 'highs'
import { expect, it } from 'vitest'
import { solveInTurn } from './in-turn.ts'
import { solve } from './linear/solve.ts'
import { build } from './rotation/build.ts'
import { driver, minutes, problem, segment } from './testing/make.ts'
import { smallProblem } from './testing/small.ts'

const solver = await loadHighs()

it('is worth as much as what a search of everything at once finds', () => {
  let split = 0
  for (let seed = 10_001; seed <= 10_040; seed += 1) {
    const rotation = build(smallProblem(seed))
    if (rotation.duties.size > 0) split += 1
    const [whole, inTurn] = [solve(rotation.model, { solver }), solveInTurn(rotation, { solver })]
    const of = ({ status, objective }: typeof whole) => ({
      seed,
      status,
      worth: objective.toFixed(2),
    })
    expect(of(inTurn)).toEqual(of(whole))
    expect(inTurn.bound).toBeGreaterThanOrEqual(whole.objective - 1e-6)
  }
  expect(split).toBeGreaterThan(10)
})

it('never tells a bound that a plan is above', () => {
  // Both tire fast and changing at the post is dear: the best driving is not the best with it.
  const people = [1_500, 1_600].map((slowerPerHourMs, place) =>
    driver(['ada', 'ben'][place] ?? '', {
      pace: { lapMs: 9_000, knownToMs: 0, slowerPerHourMs, findingInLaps: 0 },
    }),
  )
  const rules = [{ id: 'post', kind: 'dutyWanted', duty: 'post', count: 1 }] as const
  const rotation = build(problem({ segments: [segment(16, 15)], people, rules, dutyChangeLaps: 5 }))
  const told: number[] = []
  const onProgress = ({ boundLaps }: { boundLaps: number }) => told.push(boundLaps)
  const { objective } = solveInTurn(rotation, { solver, onProgress })
  expect(told.length).toBeGreaterThan(0)
  expect(Math.min(...told)).toBeGreaterThanOrEqual(objective - 0.01)
})

it('searches the whole where the best driving leaves nobody for the post', () => {
  // Ada is the quicker one and the only one who can stand at the post: she does that, and Ben drives.
  const people = [
    driver('ada', { lapMs: 9_000 }),
    driver('ben', { lapMs: 10_000, duties: ['controller'] }),
  ]
  const rules = [{ id: 'post', kind: 'dutyWanted', duty: 'post', count: 1 }] as const
  const rotation = build(problem({ segments: [segment(2, 30)], people, rules }))
  const solved = solveInTurn(rotation, { solver })
  expect(solved.status).toBe('optimal')
  expect(solved.objective).toBeCloseTo(minutes(60) / 10_000, 6)
})
