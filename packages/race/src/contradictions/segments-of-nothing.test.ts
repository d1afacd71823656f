import { expect, test } from 'vitest'
import { segmentsOfNothing } from './segments-of-nothing.ts'
import { said, segment } from './testing/looking.ts'

test('there is a segment, and each has a length', () => {
  expect(said(segmentsOfNothing, [])).toEqual([])
  expect(said(segmentsOfNothing, [], { programme: [] })).toEqual([
    'There is no segment. Without one nothing can be given green.',
  ])
  const programme = [
    segment('s1'),
    segment('s2', 0),
    segment('s3', 0, { length: { by: 'laps', laps: 1 } }),
  ]
  expect(said(segmentsOfNothing, [], { programme })).toEqual([
    'Segment 2 has no length. It would be over as it begins.',
  ])
})
