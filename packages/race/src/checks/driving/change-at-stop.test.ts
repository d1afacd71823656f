import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, stop } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'

const judge = (by: Parameters<typeof found>[0]) =>
  found({ ...by, kind: 'changeAtStop', value: { changes: true } })

test('the driver changes at a stop, or does not', () => {
  const spans = [drive('Ana', 0, 20), drive('Ben', 20, 60)]
  expect(verdicts(judge({ spans, stops: [stop(20)] }))).toEqual([['kept', 1, 0, 'Ana', 'Ben']])
  expect(sentences(judge({ spans, stops: [stop(20), stop(40)] }))).toEqual([
    'Ben drives on after the stop at 0:40 of segment 1; the driver changes at every mandatory stop.',
  ])
  expect(judge({ spans, stops: [stop(40, { mandatory: false })] })).toEqual([])
})

test('a change anywhere between in and out is one at the stop, one after it is not', () => {
  const stops = [stop(20, { outAt: GREEN_AT + 22 * MINUTE })]
  const at = (change: number) =>
    verdicts(judge({ spans: [drive('Ana', 0, change), drive('Ben', change, 60)], stops }))
  expect(at(22)).toEqual([['kept', 1, 0, 'Ana', 'Ben']])
  expect(at(23)).toEqual([['broken', 0, -1, 'Ana']])
})

test('a change with oneself counts where it begins a stint', () => {
  const spans = [drive('Ana', 0, 20), drive('Ana', 20, 60)]
  const judged = (begins: boolean) =>
    judge({
      ...{ spans, stops: [stop(20)] },
      also: [{ id: 'oneself', kind: 'changeWithOneself', value: { begins } }],
    }).map(({ verdict }) => verdict)
  expect(judged(true)).toEqual(['kept'])
  expect(judged(false)).toEqual(['broken'])
})

test('a stop that nobody has driven out of yet, or whose end is not recorded, is not judged', () => {
  expect(judge({ spans: [drive('Ana', 0, 20)], stops: [stop(20)], isWhole: false })).toEqual([])
  expect(judge({ spans: [drive('Ana', 0, 30)], stops: [stop(20, { done: true })] })).toEqual([])
})
