import { expect, test } from 'vitest'
import type { State } from '../fold/state.ts'
import { changedTo } from '../testing/changed.ts'
import { PEOPLE } from '../testing/ids.ts'
import { laneMeeting, type LaneMeeting } from '../testing/lane-meeting.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, plan, smallMeeting } from '../testing/small-meeting.ts'
import { changesFor } from './changes-for.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE
const NOW = GREEN - 20_000

/** What one more press changes. */
function changes(pressing: Pressing, press: (pressing: Pressing) => unknown, now = NOW) {
  const before = pressing.state()
  press(pressing)
  const after = pressing.state()
  return (person: string) => changesFor({ state: before, now }, { state: after, now }, person)
}
const sentences = (found: ReturnType<typeof changesFor>) => found.map(({ sentence }) => sentence)

test('a programme that slips moves everybody’s duties', () => {
  const pressing = laneMeeting({ segments: 2 })
  const of = changes(pressing, (one) =>
    one.press(NOW, 'programmeMoved.1', { fromItem: 's1', byMs: 20 * MINUTE }),
  )
  expect(sentences(of(Solveig))).toEqual(['Your stint in Segment 1 begins 0:20 later.'])
  expect(of(Imre).map(({ what, laterMs }) => [what, laterMs])).toEqual([
    ['moved', 20 * MINUTE],
    ['moved', 20 * MINUTE],
  ])
  expect(of(Tamsin)).toEqual([])
})

test('who is no longer there for what was moved is told so', () => {
  // Solveig, the first of the crew, leaves 30 minutes after green.
  const there: LaneMeeting['there'] = [{ id: 'day', toAt: GREEN + 30 * MINUTE }]
  const pressing = laneMeeting({ segments: 2, there })
  const of = changes(pressing, (one) =>
    one.press(NOW, 'programmeMoved.1', { fromItem: 's1', byMs: 20 * MINUTE }),
  )
  // From 20 to 40; there until 30.
  expect(of(Solveig)[0]?.awayMs).toBe(10 * MINUTE)
  expect(sentences(of(Solveig))).toEqual([
    'Your stint in Segment 1 begins 0:20 later. You are not there for 0:10 of it.',
  ])
})

test('a segment made shorter shortens or drops what is planned there', () => {
  const pressing = smallMeeting()
  const shorter = { what: 'length', lengthMs: 15 * MINUTE } as const
  const of = changes(pressing, (one) => changedTo(one, NOW, shorter))
  expect(of(Solveig)).toEqual([])
  expect(sentences(of(Okello))).toEqual(['Your stint in Segment 1 now lasts 0:05.'])
  const again = changes(pressing, (one) =>
    changedTo(one, NOW + 1_000, { what: 'length', lengthMs: 9 * MINUTE }),
  )
  expect(sentences(again(Okello))).toEqual(['Your stint in Segment 1 is dropped.'])
  expect(sentences(again(Solveig))).toEqual(['Your stint in Segment 1 now lasts 0:09.'])
})

test('a segment abandoned or to be run again', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const now = GREEN + 16 * MINUTE
  const of = changes(pressing, (one) => changedTo(one, now, { what: 'abandoned' }), now)
  expect(sentences(of(Okello))).toEqual(['Your stint in Segment 1 is dropped.'])
  const again = changes(
    pressing,
    (one) =>
      changedTo(one, now + 20_000, { what: 'runAgain', lapsCount: false, drivingCounts: false }),
    now,
  )
  expect(again(Solveig).map(({ what, sentence }) => [what, sentence])).toEqual([
    ['added', 'Your stint in Segment 1 is new.'],
  ])
})

test('a draw tells drivers their lane and marshals their post', () => {
  const pressing = laneMeeting({ segments: 4 })
  const of = changes(pressing, (one) => one.press(NOW, 'startDrawn.1', { lane: 1 }))
  // 1 3 5 out: the stint of the fourth falls away.
  expect(sentences(of(Solveig))).toEqual([
    'Your stint in Segment 1 is on lane 1, red.',
    'Your stint in Segment 3 is on lane 5, yellow.',
  ])
  expect(sentences(of(Okello))).toEqual([
    'Your stint in Segment 2 is on lane 3, green.',
    'Your stint in Segment 4 is dropped.',
  ])
  expect(sentences(of(Imre))).toEqual([
    'Your post in Segment 1 is at post 1.',
    'Your post in Segment 2 is at post 3.',
    'Your post in Segment 3 is at post 5.',
  ])
})

test('another plan: what is new, what is dropped, what is longer', () => {
  const pressing = smallMeeting()
  const spans = [
    { id: 's1', person: Solveig, duty: 'controller', segment: 'one', fromMs: 0, toMs: 12 * MINUTE },
    { id: 'b1', person: Tamsin, duty: 'bench', segment: 'one', fromMs: 0, toMs: 20 * MINUTE },
  ] as const
  const of = changes(pressing, (one) =>
    adopt(one, {
      ...{ document: 'plan', content: { ...plan, spans }, version: 2, at: NOW, sha: 'b' },
    }),
  )
  expect(sentences(of(Solveig))).toEqual(['Your stint in Segment 1 now lasts 0:12.'])
  expect(sentences(of(Tamsin)).sort()).toEqual([
    'Your post in Segment 1 is dropped.',
    'Your time at the bench in Segment 1 is new.',
    'Your time at the wall in Segment 1 is dropped.',
  ])
})

test('nothing changed is nothing said', () => {
  const state: State = smallMeeting().state()
  const seen = { state, now: NOW }
  expect(changesFor(seen, seen, Solveig)).toEqual([])
})
