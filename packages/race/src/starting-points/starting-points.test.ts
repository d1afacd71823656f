import { describe, expect, test } from 'vitest'
import * as z from 'zod/mini'
import { regulationsSchema } from '../documents/rules.ts'
import { STARTING_POINTS } from './index.ts'

const point = (id: string) => {
  const found = STARTING_POINTS.find((one) => one.id === id)
  if (!found) throw new Error(`There is no starting point ${id}.`)
  return found.regulations
}
const lines = (id: string) => point(id).programme.map(({ kind }) => kind)
const minutes = (id: string) =>
  point(id).programme.flatMap((item) =>
    item.kind === 'segment' && item.length.by === 'time' ? [item.length.lengthMs / 60_000] : [],
  )

describe('every starting point', () => {
  test.each(STARTING_POINTS.map((one) => [one.id, one] as const))(
    '%s is rules as they may be adopted, and says where it comes from',
    (_id, { regulations, source }) => {
      expect(z.parse(regulationsSchema, regulations)).toEqual(regulations)
      expect(source).toMatch(/\.(?:uk|it|com|net|cat)\b|^common practice, no source$/)
      for (const list of [regulations.rules, regulations.programme]) {
        expect(new Set(list.map(({ id }) => id)).size).toBe(list.length)
      }
    },
  )

  test('has an id and a name of its own', () => {
    expect(new Set(STARTING_POINTS.map(({ id }) => id)).size).toBe(11)
    expect(new Set(STARTING_POINTS.map(({ called }) => called)).size).toBe(11)
  })

  test('names only segments that its programme has', () => {
    for (const { regulations } of STARTING_POINTS) {
      const ids = regulations.programme.map(({ id }) => id)
      for (const { value } of regulations.rules) {
        if ('segments' in value && Array.isArray(value.segments)) {
          expect(ids).toEqual(expect.arrayContaining(value.segments))
        }
      }
    }
  })
})

test('lane changes lie between segments, never after the last', () => {
  expect(lines('pairs-series-2016')).toEqual([
    ...['segment', 'laneChange', 'segment', 'laneChange', 'segment', 'laneChange'],
    ...['segment', 'laneChange', 'segment', 'laneChange', 'segment'],
  ])
})

test('three stages of eight have lane changes within and breaks between', () => {
  const kinds = lines('three-stages-2015')
  // 3 × 7 lane changes and 2 breaks among 24 segments.
  expect(kinds.filter((kind) => kind === 'laneChange').length).toBe(21)
  expect(kinds.flatMap((kind, line) => (kind === 'break' ? [line] : []))).toEqual([15, 31])
  expect(point('three-stages-2015').programme[16]).toMatchObject({ name: 'Stage 2, segment 1' })
})

test('our own formats are what they say', () => {
  expect(minutes('digital-three-forties')).toEqual([40, 40, 40])
  expect(minutes('analogue-six-lanes').length).toBe(6)
  const lanes = point('analogue-sit-outs').programme.flatMap((item) =>
    item.kind === 'segment' ? [item.lane] : [],
  )
  expect(lanes.filter((lane) => lane === 'sitOut').length).toBe(2)
  expect(lanes.length).toBe(8)
})
