import { expect, test } from 'vitest'
import { MINUTE, rule, said } from './testing/looking.ts'
import { windowsOutside } from './windows-outside.ts'

const window = (from: number, to: number, segment = 's1') =>
  said(windowsOutside, [
    rule('stopWindows', {
      windows: [{ id: 'w', segment, fromMs: from * MINUTE, toMs: to * MINUTE }],
    }),
  ])

test('a window lies in its segment, to its end', () => {
  expect(window(20, 40)).toEqual([])
  expect(window(20, 60)).toEqual([])
  expect(window(20, 61)).toEqual([
    'The stop window from 0:20 to 1:01 of segment 1 cannot be used. Segment 1 is over at 1:00.',
  ])
})

test('it ends after it begins, in a segment that is there', () => {
  expect(window(20, 20)).toEqual([
    'The stop window from 0:20 to 0:20 of segment 1 cannot be used. It ends before it begins.',
  ])
  expect(window(20, 40, 's9')).toEqual([
    'The stop window from 0:20 to 0:40 cannot be used. Its segment is gone from the programme.',
  ])
})
