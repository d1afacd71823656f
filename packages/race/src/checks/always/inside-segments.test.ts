import { expect, test } from 'vitest'
import { drive, found, hour, span, stop } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

type By = Parameters<typeof found>[0]
const judge = (by: By) => found(by).filter(({ id }) => id.startsWith('insideSegments:'))

test('a duty ends with its segment at the latest', () => {
  expect(judge({ spans: [drive('Ana', 0, 60)] })).toEqual([])
  const late = judge({ spans: [drive('Ana', 0, 61)] })
  expect(verdicts(late)).toEqual([['broken', 61, -1, 'Ana']])
  expect(sentences(late)).toEqual([
    'Ana drives from 0:00 to 1:01 of segment 1; it is over at 1:00.',
  ])
  expect(judge({ spans: [{ ...drive('Ana', 0, 61), done: true }] })).toEqual([])
  expect(
    judge({ spans: [drive('Ana', 0, 61)], segments: [hour({ lengthMs: undefined })] }),
  ).toEqual([])
})

test('it ends after it begins, and its segment is there', () => {
  expect(sentences(judge({ spans: [drive('Ana', 0, 60), drive('Ben', 20, 10)] }))).toEqual([
    'Ben drives from 0:20 to 0:10 of segment 1: it ends before it begins.',
  ])
  const gone = span({ person: 'Ana', duty: 'wall', segment: 'nine' }, 0, 20)
  expect(sentences(judge({ spans: [gone] }))).toEqual([
    'Ana is at the wall from 0:00 to 0:20 of a segment that is gone.',
  ])
})

test('a stop is made before the end', () => {
  expect(judge({ spans: [], stops: [stop(59)] })).toEqual([])
  expect(sentences(judge({ spans: [], stops: [stop(60)] }))).toEqual([
    'There is a stop at 1:00 of segment 1; it is over at 1:00.',
  ])
  expect(sentences(judge({ spans: [], stops: [stop(1, { segment: 'nine' })] }))).toEqual([
    'There is a stop at 0:01 of a segment that is gone.',
  ])
})
