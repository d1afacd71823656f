import { LIGHTS, type Rule } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { firstOver } from '../fixture/lanes-on-paper.ts'
import { BEN } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { LaneChangeModel } from './lane-change-model.svelte.ts'

function at(minutes: number, log = firstOver()) {
  const meeting = new PaperMeeting(log, minutes)
  return { meeting, model: new LaneChangeModel(() => meeting) }
}

test('it says from where to where, who does what in order, and who moves the car', () => {
  const { meeting, model } = at(21)
  // 1 3 out 2 is the round: from lane 1 to lane 3.
  expect(model.shown).toMatchObject({
    title: 'Lane change, 1 of 4',
    from: { big: '1', words: 'red' },
    to: { big: '3', words: 'green', colour: 'green' },
    who: 'Ben drives. Cho to post 3.',
    car: 'The judges move the car.',
    lit: 'lanes',
  })
  expect(model.shown?.moves.map(({ words, done }) => [words, done])).toEqual([
    ['Cho to post 3', false],
    ['Ben drives', false],
    ['Ada off duty', false],
  ])
  meeting.person = BEN
  expect(model.shown?.who).toBe('You drive. Cho to post 3.')
  expect(model.shown?.moves[1]).toMatchObject({ own: true })
})

test('one press on a move, on work: each is recorded and ticked', () => {
  const { meeting, model } = at(21)
  const [first] = model.shown?.moves ?? []
  model.move(first?.id ?? '')
  expect(meeting.last).toMatchObject({ kind: 'handover.1', body: { moves: [{ post: '3' }] } })
  expect(model.shown?.moves[0]).toMatchObject({ words: 'Cho to post 3', done: true })
  model.tick('Power tested', true)
  expect(model.shown?.work).toEqual([
    { work: 'Controller plugged in', done: false },
    { work: 'Power tested', done: true },
  ])
})

test('not before and planned burn down, and are over', () => {
  // Ended at 11:20; not before 11:23, planned for 11:25. At 11:21 two of three and four of five are left.
  const { meeting, model } = at(21)
  expect(model.shown?.waits).toMatchObject([
    { id: 'earliest', label: 'not before 11:23', figure: '2:00', urgency: 'calm' },
    { id: 'planned', label: 'restart about 11:25', figure: '4:00', left: 0.8, urgency: 'soon' },
  ])
  meeting.at(26)
  expect(model.shown?.waits).toMatchObject([
    { label: 'not before 11:23: it may be green at any moment', left: 0 },
    { label: 'restart about 11:25, over by', figure: '1:00', left: 0, urgency: 'now' },
  ])
})

test('before a dark segment the lights are tried; they have the lamp once the restart presses', () => {
  const dark: Rule = { id: 'dark', kind: 'darkSegments', value: { segments: ['s2'] } }
  const { meeting, model } = at(21, firstOver(dark))
  expect(model.shown?.lights).toMatchObject({ state: 'open' })
  expect(model.shown?.lit).toBe('lanes')
  // Forty-five seconds before 11:23.
  meeting.at(22.25)
  expect(model.shown?.lit).toBe('lights')
  model.tryLights(true)
  expect(meeting.last).toEqual({ kind: 'inspected.1', body: { what: LIGHTS, inOrder: true } })
  expect(model.shown?.lights?.words).toBe('Lights tried, in order 11:22: the next segment is dark')
  expect(model.shown?.lit).toBe('work Controller plugged in')
})

test('a sit-out says what it obliges to, and a lane that is not drawn so', () => {
  const log = firstOver({ id: 'o', kind: 'sitOutDuty', value: { obliges: 'marshalAllPosts' } })
  log.add(20, 'laneDrawn.1', { segment: 's2', lane: null })
  const { model } = at(21, log)
  expect(model.shown).toMatchObject({
    to: { big: '–', words: 'sit-out' },
    who: 'We marshal all posts. Cho marshals.',
    car: 'The car leaves the track.',
    work: [],
  })
})

test('at green it goes', () => {
  const { meeting, model } = at(24)
  meeting.press('green.1', { segment: 's2' })
  expect(model.shown).toBeUndefined()
})
