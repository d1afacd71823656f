/** What the demo on fixed lanes shows, folded from its script alone. */
import {
  compulsoryRepairs,
  isUnread,
  judge,
  laneChange,
  lanesOf,
  obligations,
  planTimeline,
  raceTimeline,
  resultOf,
  stintClock,
} from '@pitlamp/race'
import { expect, test } from 'vitest'
import { DEMOS } from './demo.ts'
import { replayed } from './testing/replayed.ts'

const { folder, openAtMs } = DEMOS.lanes
const { script, entries, atOf, stateAt } = replayed(folder)

const lanesAt = (time: string) =>
  [...lanesOf(stateAt(time), atOf(time)).values()].map((lane) =>
    typeof lane === 'object' ? lane.lane : lane,
  )
const changeAt = (time: string) => laneChange(stateAt(time), atOf(time))

test('everything in it is read, and all of it adds up', () => {
  expect(entries.filter(isUnread)).toEqual([])
  expect(stateAt('3:00:00').problems).toEqual([])
})

test('a newcomer arrives before the draw, and sees it', () => {
  const soon = script.presses.filter(
    ({ offsetMs }) => offsetMs > openAtMs && offsetMs <= openAtMs + 60_000,
  )
  expect(soon[0]?.kind).toBe('startDrawn.1')
  expect(lanesAt('-0:02:00')).toEqual(Array(8).fill('notDrawnYet'))
  // 1 3 5 – 6 4 2 –, begun at 3.
  expect(lanesAt('-0:01:00')).toEqual([3, 5, 'sitOut', 6, 4, 2, 'sitOut', 1])
})

test('its plan keeps the rules once the lanes are known, and so does its race', () => {
  const broken = (time: string, timeline: typeof planTimeline) =>
    judge(stateAt(time), timeline(stateAt(time), atOf(time)), atOf(time))
      .filter(({ verdict }) => verdict === 'broken')
      .map(({ id }) => id)
  expect(broken('-0:01:00', planTimeline)).toEqual([])
  expect(broken('3:00:00', raceTimeline)).toEqual([])
})

test('lanes change, the next one is dark, and its lights fail the test', () => {
  // A minute and ten seconds after the end at 0:10:00; five minutes later than three after it.
  expect(changeAt('0:11:10')).toMatchObject({
    ...{ from: { lane: 3 }, to: { lane: 5 }, lights: { state: 'notInOrder' } },
    earliest: { toGoMs: 50_000 },
    planned: { at: atOf('0:18:00'), toGoMs: 410_000 },
  })
  const due = obligations(stateAt('0:11:10'), atOf('0:11:10')).map(({ id }) => id)
  expect(due).toContain('lightTest:s2')
  expect(changeAt('0:12:05')?.lights?.state).toBe('inOrder')
})

test('the lights fail again in the dark, for eight laps at most', () => {
  // Noted at 0:22:30; Joost laps in 7.26 s: 8 laps are 58.08 s, of which 30 s are over.
  expect(compulsoryRepairs(stateAt('0:23:00'), atOf('0:23:00'))).toMatchObject([
    { rule: 'lights', clause: '7.2', limit: { by: 'laps', remainingMs: 28_080 } },
  ])
  expect(compulsoryRepairs(stateAt('0:25:00'), atOf('0:25:00'))).toEqual([])
})

test('the third segment is sat out: two marshal, nobody drives', () => {
  expect(changeAt('0:29:00')).toMatchObject({
    ...{ to: 'sitOut', sitOut: { obliges: 'marshalSomePosts', posts: 2 } },
  })
  expect(stintClock(stateAt('0:35:00'), atOf('0:35:00'))).toBeUndefined()
})

test('the fourth is run again two minutes after it was stopped', () => {
  expect(changeAt('0:49:00')).toMatchObject({
    ...{ from: { lane: 6 }, to: { lane: 6 }, planned: { at: atOf('0:50:35') } },
  })
})

test('a classification after each segment adds up to the result', () => {
  const classified = script.presses.filter(({ kind }) => kind === 'classification.1')
  expect(classified.map(({ body }) => body['segment'] ?? body['scope'])).toEqual([
    ...['s1', 's2', 's3', 's4', 's5', 's6', 's7', 's8'],
    ...['whole', 'whole'],
  ])
  const lines = resultOf(stateAt('3:00:00'), atOf('3:00:00'))?.lines ?? []
  // 81.40 + 76.15 + 81.45 + 79.20 + 70.10 + 82.20 = 469 and 150 of 50, less two laps in the dark.
  expect(lines.find(({ ours }) => ours)).toMatchObject({
    ...{ place: 6, entrant: 'Ember Lane', distance: { laps: 470, sections: 0 } },
  })
  const shown = classified.at(-1)?.body['lines'] as { entrant: string; laps: number }[]
  expect(lines.map(({ entrant, distance }) => [entrant, distance.laps])).toEqual(
    shown.map(({ entrant, laps }) => [entrant, laps]),
  )
})
