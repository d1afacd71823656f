/**
 * The same optimum from a second solver: eight stored problems (`second-solver/models/`, each says what it is
 * about), each with what CBC found for it: COIN-OR Branch and Cut 2.10.8
 * (github.com/coin-or/Cbc), Debian package coinor-cbc, on 26 November 2026, gaps of 0. It is run by hand only:
 *
 *     apt-get install coinor-cbc
 *     npx tsx tests/reference/second-solver/write-models.ts /tmp/models
 *     cd /tmp/models && cbc every-lane.mps -ratioGap 0 -allowableGap 0 -solve -quit
 *
 * The files minimise, so that its "Objective value" is minus the laps. It reads the model as it is built now, and took
 * six seconds at most. The number stored belongs to the problem: a model built otherwise has to come to it too.
 */
import loadHighs from 'highs'
import { plan } from '@pitlamp/planner'
import { describe, expect, it } from 'vitest'
import { ModelBuilder } from '../../packages/planner/src/linear/model.ts'
import { mpsOf } from './second-solver/mps.ts'
import { MODELS, stored } from './second-solver/stored.ts'

const solver = await loadHighs()
const WITHIN_LAPS = 0.02

describe('two solvers', () => {
  it('have eight models to agree on', () => expect(MODELS).toHaveLength(8))

  it.each(MODELS)('find the same optimum: %s', (model) => {
    const { problem, optimumLaps } = stored(model)
    const answer = plan(problem, { solver })
    if (answer.kind !== 'planned') throw new Error(`It is ${answer.kind}.`)
    expect(['best', 'bestOnGrid']).toContain(answer.proof)
    expect(Math.abs(answer.worthLaps - optimumLaps)).toBeLessThanOrEqual(WITHIN_LAPS)
  })
})

it('writes a model to be minimised, with every kind of row and bound', () => {
  const model = new ModelBuilder()
  const drives = model.column({ cost: 100.5 })
  const hours = model.part({ cost: -3, upper: Infinity })
  const unused = model.part({ lower: -Infinity, upper: 4 })
  model.row([[drives, 2]], { atLeast: 1, atMost: 1 })
  model.row([[hours, 1]], { atLeast: 0.5, atMost: 2 })
  model.row([[hours, 1]], { atLeast: -1 })
  model.row([[drives, -1]], { atMost: 3 })
  expect([drives, hours, unused]).toEqual([0, 1, 2])
  // The range of r1 is 2 − 0.5 below its upper side.
  expect(mpsOf(model, 'by-hand').split('\n')).toEqual([
    ...['NAME by-hand FREE', 'ROWS', ' N minusLaps', ' E r0', ' L r1', ' G r2', ' L r3'],
    'COLUMNS',
    " m0 'MARKER' 'INTORG'",
    ...[' c0 minusLaps -100.5', ' c0 r0 2', ' c0 r3 -1'],
    " n0 'MARKER' 'INTEND'",
    ...[' c1 minusLaps 3', ' c1 r1 1', ' c1 r2 1', ' c2 minusLaps 0'],
    ...['RHS', ' rhs r0 1', ' rhs r1 2', ' rhs r2 -1', ' rhs r3 3'],
    ...['RANGES', ' range r1 1.5'],
    'BOUNDS',
    ...[' LO bound c0 0', ' UP bound c0 1', ' LO bound c1 0', ' PL bound c1'],
    ...[' MI bound c2', ' UP bound c2 4', 'ENDATA', ''],
  ])
})
