import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { findings } from '../findings.ts'
import { crewOf, drive, found, GREEN_AT, regulationsOf, timelineOf } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const oneself = { id: 'oneself', kind: 'changeWithOneself', value: { begins: true } } as const
// Ana three stints of 10 min in a row, then Ben, then Ana again.
const spans = [
  ...[drive('Ana', 0, 10), drive('Ana', 10, 20), drive('Ana', 20, 30)],
  ...[drive('Ben', 30, 40), drive('Ana', 40, 50)],
]

test('stints in a row: kept, just kept, broken', () => {
  const judge = (atMost: number) =>
    found({ spans, also: [oneself], kind: 'stintsInARow', value: { atMost } })
  expect(verdicts(judge(4))).toEqual([['kept', 3, 1, 'Ana']])
  expect(verdicts(judge(3))).toEqual([['kept', 3, 0, 'Ana']])
  expect(verdicts(judge(2))).toEqual([['broken', 3, -1, 'Ana']])
  expect(sentences(judge(2))).toEqual([
    'Ana drives 3 stints in a row from 0:00 of segment 1, at most 2.',
  ])
})

test('it is broken as the first stint too many begins', () => {
  const rule = { id: 'row', kind: 'stintsInARow', value: { atMost: 2 } } as const
  const judged = {
    regulations: regulationsOf([rule, oneself]),
    crew: crewOf({ spans }),
    timeline: timelineOf({ spans }),
  }
  // The third begins at minute 20.
  const between = (from: number, to: number) =>
    findings(judged, {
      ...{ fromAt: GREEN_AT + from * MINUTE, toAt: GREEN_AT + to * MINUTE, isLast: false },
    }).map(({ verdict }) => verdict)
  expect(between(0, 20)).toEqual([])
  expect(between(20, 21)).toEqual(['broken'])
})
