import type { Rule } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { listText, longParts, setLines, wholeText } from './list-parts.ts'

const MINUTE_MS = 60_000
const segment = (id: string) => `Segment ${id}`
const dark = (...segments: string[]): Rule => ({
  id: 'd',
  kind: 'darkSegments',
  value: { segments },
})
const window = (id: string) => ({ id, segment: id, fromMs: 10 * MINUTE_MS, toMs: 30 * MINUTE_MS })
const stops = (...ids: string[]): Rule => ({
  ...{ id: 'w', kind: 'stopWindows' },
  value: { windows: ids.map(window) },
})

it('stands in the sentence while it is short', () => {
  expect(longParts(dark('1', '2', '3'))).toEqual([])
  expect(listText(dark('1', '2', '3'), 'segments', segment)).toBe(
    'Segment 1, Segment 2 and Segment 3',
  )
  expect(listText(stops('1'), 'windows', segment)).toBe('Segment 1 from 0:10 to 0:30')
})

it('is counted where it is long, and stands below in full', () => {
  expect(longParts(dark('1', '2', '3', '4'))).toEqual(['segments'])
  expect(listText(dark('1', '2', '3', '4'), 'segments', segment)).toBe('4 segments')
  expect(listText(stops('1', '2'), 'windows', segment)).toBe('2 windows')
  expect(wholeText(stops('1', '2'), 'windows', segment)).toBe(
    'Segment 1 from 0:10 to 0:30 and Segment 2 from 0:10 to 0:30',
  )
})

it('is not known yet once nothing is left in it', () => {
  const rule = stops('1')
  setLines(rule, 'windows', [])
  expect(rule.value).toEqual({ windows: 'notKnownYet' })
})
