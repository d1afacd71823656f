import { expect, test } from 'vitest'
import { segmentsGone } from './segments-gone.ts'
import { rule, said } from './testing/looking.ts'

test('a rule names segments that are there', () => {
  const dark = (segments: string[]) => said(segmentsGone, [rule('darkSegments', { segments })])
  expect(dark(['s1'])).toEqual([])
  expect(dark(['s1', 's9'])).toHaveLength(1)
})
