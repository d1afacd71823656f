import type { RuleOf } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { ADA, MINUTE, prepared, START } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { WallModel } from './wall-model.svelte.ts'

type Repair = RuleOf<'compulsoryRepair'>['value']

/** A segment of two hours from 11:00, a lane change after it, Ada driving at 9.5 s a lap. */
function log(value: Partial<Repair>, paceMs?: number) {
  const paper = prepared('rules', 'crew', 'plan')
  const segment = { kind: 'segment', length: { by: 'time', lengthMs: 120 * MINUTE } } as const
  const rule = { what: 'Rear wing', underGreen: false, ...value } as const
  const calls = { during: 'trackCall', allowed: false } as const
  paper.adopt('rules', {
    name: 'On paper',
    timeZone: 'UTC',
    programme: [
      { id: 's1', ...segment, plannedAt: START },
      { id: 'l1', kind: 'laneChange' },
      { id: 's2', ...segment },
    ],
    rules: [
      { id: 'w', kind: 'compulsoryRepair', clause: '7.2', value: rule },
      { id: 'k', kind: 'workAllowed', value: calls },
    ],
  })
  paper.adopt('crew', { people: [{ id: ADA, name: 'Ada', duties: [], paceMs }] })
  paper.add(0, 'green.1', { segment: 's1' })
  paper.add(0, 'handover.1', { moves: [{ person: ADA, duty: 'controller' }] })
  return paper
}

function wall(paper: ReturnType<typeof log>, minutes: number) {
  const meeting = new PaperMeeting(paper, minutes)
  return { meeting, model: new WallModel(() => meeting) }
}

test('a compulsory repair has its limit first, estimated from laps, and leaves no choice', () => {
  const paper = log({ laps: 4, costLaps: 1 }, 9_500)
  paper.add(10, 'faultNoted.1', { fault: 'Rear wing' })
  // 4 laps of 9.5 s are 38 s, all of them left; the next opportunity is the lane change at 13:00.
  const { model } = wall(paper, 10)
  expect(model.faults[0]).toMatchObject({
    urgency: 'now',
    lit: true,
    rule: {
      limit: 'Rule 7.2: within 4 laps',
      left: 'about 0:38 left, estimated',
      burn: 1,
      verdict: 'The rule leaves no choice: bring it in.',
      notes: ['then −1 lap for each lap'],
    },
  })
})

test('over its limit it counts the laps that cost', () => {
  const paper = log({ laps: 4, costLaps: 1 }, 9_500)
  paper.add(10, 'faultNoted.1', { fault: 'Rear wing' })
  // 60 − 38 = 22 s over: two whole laps of 9.5 s.
  expect(wall(paper, 11).model.faults[0]?.rule).toMatchObject({
    left: 'over by 0:22, estimated',
    notes: ['then −1 lap for each lap', 'about 2 laps over, −2 laps'],
  })
})

test('without a pace laps are for the crew to count, and nothing is made up', () => {
  const paper = log({ laps: 4 })
  paper.add(10, 'faultNoted.1', { fault: 'Rear wing' })
  expect(wall(paper, 10.1).model.faults[0]).toMatchObject({
    urgency: 'soon',
    rule: {
      limit: 'Rule 7.2: within 4 laps',
      left: 'no pace entered: count the laps',
      verdict: 'Not known whether it can wait: bring it in.',
    },
  })
})

test('the milder limit says why it holds, and until when it can wait', () => {
  const paper = log({ laps: 4, firstTime: 'laneChange' }, 9_500)
  paper.add(10, 'faultNoted.1', { fault: 'Rear wing' })
  // The segment ends at 13:00: 120 − 11 = 109 min = 1:49:00.
  expect(wall(paper, 11).model.faults[0]).toMatchObject({
    urgency: 'calm',
    rule: {
      limit: 'Rule 7.2: by the lane change',
      left: '1:49:00 left',
      verdict: 'It can wait until about 13:00.',
      notes: ['the milder limit: first time'],
    },
  })
})

test('what a rule is about comes before older faults', () => {
  const paper = log({ withinMs: 10 * MINUTE })
  paper.add(5, 'faultNoted.1', { fault: 'Lights' })
  paper.add(10, 'faultNoted.1', { fault: 'Rear wing' })
  const { faults } = wall(paper, 11).model
  expect(faults.map(({ name }) => name)).toEqual(['Rear wing', 'Lights'])
  expect(faults[0]?.rule).toMatchObject({ limit: 'Rule 7.2: within 10:00 min', left: '9:00 left' })
})

test('a repair pauses by itself where hands must be off the car, and by hand', () => {
  const paper = log({ laps: 4 })
  const fault = paper.add(10, 'faultNoted.1', { fault: 'Lights' })
  paper.add(11, 'repairStarted.1', { fault })
  paper.add(12, 'trackCall.1', {})
  const { meeting, model } = wall(paper, 13)
  // One minute at it; the second one hands were off.
  expect(model.faults[0]).toMatchObject({
    repair: '1:00',
    repairing: true,
    paused: 'paused: hands off the car',
  })
  model.pressFault(fault, 'pause')
  expect(meeting.last?.kind).toBe('repairPaused.1')
  expect(model.faults[0]).toMatchObject({ repairing: false, paused: 'paused' })
})

test('parts are fitted from the fault', () => {
  const paper = log({ laps: 4 })
  const fault = paper.add(10, 'faultNoted.1', { fault: 'Lights' })
  const { model } = wall(paper, 11)
  model.pressFault(fault, 'fit')
  expect(model.sheet).toBe('fit')
})
