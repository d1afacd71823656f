import { expect, test } from 'vitest'
import { MINUTE } from '../../testing/small-meeting.ts'
import { drive, found, GREEN_AT, hour } from '../testing/judging.ts'
import { sentences, verdicts } from '../testing/verdicts.ts'
import { windowsOf } from './rolling-driving.ts'

const judge = (by: Parameters<typeof found>[0], atMost: number, within: number) =>
  found({
    ...{ segments: [hour({ lengthMs: 1_440 * MINUTE })], ...by },
    ...{ kind: 'rollingDriving', value: { atMostMs: atMost * MINUTE, withinMs: within * MINUTE } },
  })
const worst = (spans: readonly ReturnType<typeof drive>[], within: number) =>
  Math.max(0, ...windowsOf(spans, within * MINUTE).map(({ drivenMs }) => drivenMs / MINUTE))

test('four hours, one of rest, four hours keep 14 h in all and break 4 h in any 6 h', () => {
  // 24 h Le Mans: at most 4 h in any 6 h. From 0:00 to 6:00 it is 4 + 1 = 5 h, and so from 3:00 to 9:00.
  const spans = [drive('Ana', 0, 240), drive('Ana', 300, 540)]
  expect(verdicts(judge({ spans }, 240, 360))).toEqual([['broken', 300, -60, 'Ana']])
  expect(sentences(judge({ spans }, 240, 360))).toEqual([
    'Ana drives 5:00 within 6:00, at most 4:00.',
  ])
  // With two hours of rest any 6 h hold 4 h.
  const rested = [drive('Ana', 0, 240), drive('Ana', 360, 600)]
  expect(verdicts(judge({ spans: rested }, 240, 360))).toEqual([['kept', 240, 0, 'Ana']])
  expect(verdicts(judge({ spans: rested }, 241, 360))).toEqual([['kept', 240, 1, 'Ana']])
})

test('three hours in any five: a window that begins inside a stint is found from its end', () => {
  // Motorsport UK National Competition Rules 2026. 0–60, 120–200, 260–360: from 60 to 360 there are 80 + 100 = 180,
  // and moved to begin at 0 there are 60 + 80 + 40 = 180 as well; a minute more at the end is one too many.
  const until = (end: number) => [drive('A', 0, 60), drive('A', 120, 200), drive('A', 260, end)]
  expect(verdicts(judge({ spans: until(360) }, 180, 300))).toEqual([['kept', 180, 0, 'A']])
  // To 361 from 61: 80 + 101 = 181.
  expect(verdicts(judge({ spans: until(361) }, 180, 300))).toEqual([['broken', 181, -1, 'A']])
})

test('breaches that do not overlap are said one by one', () => {
  // Twice 100 min within 120, ten hours apart.
  const spans = [drive('Ana', 0, 100), drive('Ana', 700, 800)]
  expect(verdicts(judge({ spans }, 90, 120))).toEqual([
    ['broken', 100, -10, 'Ana'],
    ['broken', 100, -10, 'Ana'],
  ])
})

test('it goes by meeting time: a call the race clock holds for counts, one that driving holds for does not', () => {
  // Ana: race clock 0–60, with 30 min of call from minute 10, so until minute 90.
  const spans = [{ ...drive('Ana', 0, 60), toAt: GREEN_AT + 90 * MINUTE }]
  expect(verdicts(judge({ spans }, 80, 120))).toEqual([['broken', 90, -10, 'Ana']])
  expect(verdicts(judge({ spans, notDriving: [[10, 40]] }, 80, 120))).toEqual([
    ['kept', 60, 20, 'Ana'],
  ])
  // The worst hour then is 40–90 and the ten before the call: 30–90 holds 50.
  expect(verdicts(judge({ spans, notDriving: [[10, 40]] }, 50, 60))).toEqual([
    ['kept', 50, 0, 'Ana'],
  ])
})

test('no window but those at ends of pieces is worse, tried minute by minute', () => {
  const spans = [drive('A', 3, 17), drive('A', 21, 22), drive('A', 30, 55), drive('A', 58, 71)]
  // Driving minutes written out: 3–16, 21, 30–54, 58–70.
  const drives = (minute: number) =>
    (minute >= 3 && minute < 17) ||
    minute === 21 ||
    (minute >= 30 && minute < 55) ||
    (minute >= 58 && minute < 71)
  for (let within = 1; within < 80; within += 1) {
    let most = 0
    for (let from = -80; from < 80; from += 1) {
      let sum = 0
      for (let minute = from; minute < from + within; minute += 1) sum += drives(minute) ? 1 : 0
      most = Math.max(most, sum)
    }
    expect([within, worst(spans, within)]).toEqual([within, most])
  }
})
