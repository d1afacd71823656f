import { expect, test } from 'vitest'
import { ADA, BEN, MINUTE, prepared, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { BetweenModel } from './between-model.svelte.ts'

const HOUR = 60 * MINUTE
const segment = (id: string) =>
  ({ id, kind: 'segment', length: { by: 'time', lengthMs: HOUR } }) as const

/** The first hour over at 12:00 and something after it, by these rules. */
function over(after: object, rules: readonly object[] = []): PaperLog {
  const log = prepared('rules', 'car', 'plan')
  log.adopt('rules', {
    name: 'Two hours',
    timeZone: 'UTC',
    programme: [segment('s1'), after, segment('s2')],
    rules,
  })
  log.adopt('car', {
    name: 'Car',
    faultTiles: [],
    betweenWork: ['Brush braid', 'Wipe tyres with lighter fluid', 'Controller plugged in'],
  })
  const whole = { segment: 's2', fromMs: 0, toMs: HOUR }
  log.adopt('plan', {
    spans: [
      { id: 'd', person: BEN, duty: 'controller', ...whole },
      { id: 'm', person: ADA, duty: 'post', post: '3', ...whole },
    ],
    stops: [],
    captain: { goMarginMs: 0, askForClockAtMs: 5_000, hotWorkInStops: false },
  })
  log.add(0, 'green.1', { segment: 's1' })
  log.add(0, 'handover.1', { moves: [{ person: ADA, duty: 'controller' }] })
  log.add(60, 'segmentEnd.1', { segment: 's1' })
  return log
}

const BREAK = { id: 'b', kind: 'break', lengthMs: 10 * MINUTE }
const at = (minutes: number, log: PaperLog) => {
  const meeting = new PaperMeeting(log, minutes)
  return { meeting, model: new BetweenModel(() => meeting) }
}

test('the planned green burns down, has the lamp near its end, and counts over', () => {
  // Ten minutes from 12:00: after four of them six are left, 6 / 10.
  const { meeting, model } = at(64, over(BREAK))
  expect(model.title).toBe('Break')
  expect(model.waits).toMatchObject([
    { id: 'planned', label: 'Planned green about 12:10', figure: '6:00', left: 0.6, lit: false },
  ])
  meeting.at(66)
  expect(model.waits).toMatchObject([{ figure: '4:00', urgency: 'soon', lit: true }])
  meeting.at(71)
  expect(model.waits).toMatchObject([
    { label: 'Planned green about 12:10, over by', figure: '1:00', left: 0, urgency: 'now' },
  ])
})

test('of a lane change the earliest green the rules allow comes first', () => {
  const log = over({ id: 'b', kind: 'laneChange', lengthMs: 5 * MINUTE }, [
    { id: 'r', kind: 'laneChange', value: { lengthMs: 5 * MINUTE, earliestMs: 3 * MINUTE } },
  ])
  // After one of three and of five minutes: 2 / 3 and 4 / 5.
  const { model } = at(61, log)
  expect(model.title).toBe('Lane change')
  expect(model.waits.map(({ id, figure }) => [id, figure])).toEqual([
    ['earliest', '2:00'],
    ['planned', '4:00'],
  ])
  expect(model.waits[0]?.left).toBeCloseTo(2 / 3)
  expect(model.waits.map(({ lit }) => lit)).toEqual([true, false])
})

test('nothing counts where nobody said how long', () => {
  expect(at(61, over({ id: 'b', kind: 'break' })).model.waits).toEqual([])
})

test('parc fermé says whether hands may touch the car, what it costs, and by which clause', () => {
  const log = over(BREAK, [
    {
      id: 'w',
      kind: 'workAllowed',
      clause: '6.4',
      value: { during: 'parcFerme', allowed: true, costLaps: 5 },
    },
  ])
  const { model } = at(61, log)
  expect([model.title, model.hands, model.clause]).toEqual([
    'Parc fermé',
    'Work allowed, −5 laps',
    '6.4',
  ])
})

test('work is ticked in its order, hot work with what to mind', () => {
  const { meeting, model } = at(61, over(BREAK))
  expect(model.work.map(({ work, done, next }) => [work, done, next])).toEqual([
    ['Brush braid', false, true],
    ['Wipe tyres with lighter fluid', false, false],
    ['Controller plugged in', false, false],
  ])
  model.tick('Brush braid', true)
  expect(meeting.last).toEqual({ kind: 'workTicked.1', body: { work: 'Brush braid', done: true } })
  expect(model.work[0]).toMatchObject({ done: true, next: false })
  expect(model.work[1]).toMatchObject({ next: true, cautions: [{ of: 'solvent' }] })
  model.tick('Brush braid', false)
  expect(model.work[0]).toMatchObject({ done: false, next: true })
})

test('it says who is next, in which order people move, and what was measured', () => {
  const log = over(BREAK, [
    {
      id: 'a',
      kind: 'allowance',
      value: { of: 'tyreSets', count: 2, when: 'freely', costLaps: 2 },
    },
  ])
  log.add(61, 'measured.1', { quantity: 'Clearance', unit: 'mm', valueMilli: 1150 })
  log.add(62, 'measured.1', { quantity: 'Clearance', unit: 'mm', valueMilli: 1090 })
  log.add(62, 'partFitted.1', { position: 'Rear', part: 'Set B', allowance: 'tyreSets' })
  const { model } = at(63, log)
  expect(model.next.map(({ duty, name }) => `${duty}: ${name}`)).toEqual([
    'Controller: Ben',
    'Post 3: Ada',
  ])
  expect(model.moves).toEqual(['Ada to post 3', 'Ben drives'])
  expect(model.measured).toMatchObject([{ quantity: 'Clearance', value: '1.09 mm', time: '12:02' }])
  // One at the start, one fitted since.
  expect(model.allowances).toEqual([
    { rule: 'a', what: 'Tyre sets', used: '2 of 2 used', next: 'the next tyre set costs 2 laps' },
  ])
})

test('there is nothing to show while a segment runs', () => {
  const log = over(BREAK)
  log.add(70, 'green.1', { segment: 's2' })
  expect(at(71, log).model.here).toBe(false)
})
