import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, marshal } from '../testing/judging.ts'

const rule = { kind: 'marshalWhileDriving', value: { allowed: false } } as const

test('marshalling while driving: kept, just kept, broken', () => {
  const judge = (from: number) =>
    found({ spans: [drive('Ana', 0, 30), marshal('Ana', from, 50)], ...rule }).map(
      ({ verdict, value, margin }) => [verdict, value / MINUTE, margin / MINUTE],
    )
  expect(judge(35)).toEqual([['kept', 0, 0]])
  expect(judge(30)).toEqual([['kept', 0, 0]])
  expect(judge(29)).toEqual([['broken', 1, -1]])
})

test('it names both spans, and says nothing where it is allowed or not known yet', () => {
  const spans = [drive('Ana', 0, 30), marshal('Ana', 10, 20), marshal('Ben', 0, 60)]
  expect(found({ spans, ...rule })).toMatchObject([
    {
      people: ['Ana'],
      spans: [spans[0]?.id, spans[1]?.id],
      sentence: 'Ana drives and marshals at once for 0:10.',
    },
  ])
  const judge = (allowed: true | 'notKnownYet') => found({ spans, ...rule, value: { allowed } })
  expect(judge(true)).toEqual([])
  expect(judge('notKnownYet')).toEqual([])
})
