import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { findings } from '../findings.ts'
import {
  crewOf,
  drive,
  found,
  GREEN_AT,
  regulationsOf,
  span,
  timelineOf,
} from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (name: string, by: By) => found(by).filter(({ id }) => id.startsWith(`${name}:`))

test('everybody is there: all of a duty, just all, not all', () => {
  const spans = [drive('Ana', 10, 30), span({ person: 'Ana', duty: 'offDuty' }, 30, 60)]
  const there = (from: number, to: number) =>
    judge('isThere', { spans, there: { Ana: [[from, to]] } })
  expect(there(0, 60)).toEqual([])
  expect(there(10, 30)).toEqual([])
  // Ten minutes late and five too early away: 20 - 10 + 30 - 25 = 15.
  expect(verdicts(there(20, 25))).toEqual([['broken', 15, -15, 'Ana']])
  expect(sentences(there(20, 25))).toEqual([
    'Ana drives from 0:10 to 0:30 of segment 1 and is not there for 0:15 of it.',
  ])
})

test('what people said since holds for what is planned, not for what was raced', () => {
  const spans = [drive('Ana', 10, 30), { ...drive('Ana', 30, 40), done: true }]
  const judged = (from: number, to: number) => {
    const away = new Map([
      ['Ana', { fromAt: GREEN_AT + from * MINUTE, toAt: GREEN_AT + to * MINUTE }],
    ])
    const regulations = regulationsOf([])
    const of = { regulations, crew: crewOf({ spans }), timeline: timelineOf({ spans }), away }
    return findings(of).filter(({ id }) => id.startsWith('isThere:'))
  }
  expect(judged(0, 10)).toEqual([])
  expect(judged(30, 60)).toEqual([])
  // Away until 25 of what is from 10 to 30.
  expect(verdicts(judged(5, 25))).toEqual([['broken', 15, -15, 'Ana']])
})
