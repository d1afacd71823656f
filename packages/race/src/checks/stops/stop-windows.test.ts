import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import type { Finding } from '../findings.ts'
import { drive, found, stop } from '../testing/judging.ts'

const spans = [drive('Ana', 0, 60)]
const window = (id: string, from: number, to: number) => ({
  ...{ id, segment: 'one' },
  ...{ fromMs: from * MINUTE, toMs: to * MINUTE },
})
const rule = (...windows: readonly ReturnType<typeof window>[]) => ({
  kind: 'stopWindows' as const,
  value: { windows: [...windows] },
})
const limits = (found: readonly Finding[]) =>
  found.map(({ id, verdict, margin }) => [id.replace('under-test:', ''), verdict, margin])

test('a stop in its window: kept, just kept at either end, broken', () => {
  const judge = (minute: number) =>
    limits(found({ spans, stops: [stop(minute)], ...rule(window('w', 10, 20)) }))
  expect(judge(13)).toEqual([
    ['served', 'kept', 0],
    ['inWindow', 'kept', 3 * MINUTE],
  ])
  for (const edge of [10, 20]) {
    expect(judge(edge)).toEqual([
      ['served', 'kept', 0],
      ['inWindow', 'kept', 0],
    ])
  }
  for (const outside of [9, 21]) {
    expect(judge(outside)).toEqual([
      ['served', 'broken', -1],
      ['inWindow', 'broken', -MINUTE],
    ])
  }
})

test('one stop serves one window, also where they overlap', () => {
  const windows = rule(window('early', 10, 30), window('late', 20, 40))
  const served = (...minutes: readonly number[]) =>
    found({ spans, stops: minutes.map((minute) => stop(minute)), ...windows })
      .filter(({ id }) => id.endsWith(':served'))
      .map(({ verdict }) => verdict)
  expect(served(25)).toEqual(['broken'])
  expect(served(25, 26)).toEqual(['kept'])
})

test('a stop serves the window that closes first, in whatever order they are written', () => {
  const windows = rule(window('late', 20, 50), window('early', 10, 20))
  const findings = found({ spans, stops: [stop(20), stop(40)], ...windows })
  expect(findings.filter(({ id }) => id.endsWith(':served')).map(({ verdict }) => verdict)).toEqual(
    ['kept'],
  )
})

test('a stop that is not mandatory neither serves a window nor needs one', () => {
  const stops = [stop(5, { mandatory: false }), stop(15, { mandatory: false })]
  expect(limits(found({ spans, stops, ...rule(window('w', 10, 20)) }))).toEqual([
    ['served', 'broken', -1],
  ])
})

test('sentences', () => {
  const sentences = (minute: number) =>
    found({ spans, stops: [stop(minute)], ...rule(window('w', 10, 20)) }).map(
      ({ sentence }) => sentence,
    )
  expect(sentences(21)).toEqual([
    'There is no mandatory stop from 0:10 to 0:20 of segment 1.',
    'The window of the stop at 0:21 of segment 1 closes at 0:20.',
  ])
  expect(found({ spans, stops: [stop(21)], ...rule() })).toMatchObject([
    { verdict: 'broken', sentence: 'For the stop at 0:21 of segment 1 there is no window.' },
  ])
})

test('in a race a window is open until the race clock has passed it', () => {
  const judge = (minute: number) =>
    limits(
      found({ spans: [drive('Ana', 0, minute)], isWhole: false, ...rule(window('w', 10, 20)) }),
    )
  expect(judge(20)).toEqual([['served', 'open', -1]])
  expect(judge(21)).toEqual([['served', 'broken', -1]])
})
