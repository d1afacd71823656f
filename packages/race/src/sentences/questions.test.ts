import { expect, it } from 'vitest'
import type { Regulations } from '../documents/rules.ts'
import { briefingQuestions } from './questions.ts'

const written = (rules: Regulations['rules']): Regulations => ({
  ...{ name: 'Six hours', timeZone: 'Europe/Dublin', programme: [] },
  rules,
})

it('asks what is not known yet, in the order of the rules and of what they say', () => {
  const questions = briefingQuestions(
    written([
      { id: 'a', kind: 'changeAtStop', value: { changes: 'notKnownYet' } },
      {
        id: 'b',
        kind: 'stopMinimum',
        value: { minimumMs: 45_000, from: 'notKnownYet', to: 'notKnownYet' },
      },
    ]),
  )
  expect(questions).toEqual([
    'Must the driver change at every stop?',
    'From which moment is a stop timed: the pit entry, or the car standing?',
    'Until which moment is it timed: wheels turning, or the pit exit?',
  ])
})

it('asks once what several rules leave open', () => {
  const clock = (id: string, clock: 'segment' | 'driving') =>
    ({
      id,
      kind: 'clockPolicy',
      value: { clock, under: 'trackCall', does: 'notKnownYet' },
    }) as const
  expect(briefingQuestions(written([clock('a', 'segment'), clock('b', 'driving')]))).toEqual([
    'Which clocks go on while power is off?',
  ])
})

it('asks nothing where everything is said', () => {
  expect(
    briefingQuestions(written([{ id: 'a', kind: 'changeAtStop', value: { changes: true } }])),
  ).toEqual([])
})
