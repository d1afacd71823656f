import type { Regulations } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { ADA, BEN, CHO, MINUTE, prepared, running, START } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { standingComes } from './standing-comes.svelte.ts'
import { WallModel } from './wall-model.svelte.ts'
import { WallSheets } from './wall-sheets.svelte.ts'

await standingComes.load()

function wall(log: ConstructorParameters<typeof PaperMeeting>[0], minutes: number) {
  const meeting = new PaperMeeting(log, minutes)
  const model = new WallModel(() => meeting)
  const sheets = new WallSheets(
    () => model,
    () => meeting,
  )
  return { meeting, model, sheets }
}

/** The paper meeting's programme under these rules alone. */
function ruled(rules: Regulations['rules'], paceMs?: number) {
  const log = prepared('rules', 'crew')
  const segment = { kind: 'segment', length: { by: 'time', lengthMs: 120 * MINUTE } } as const
  const programme = [
    { id: 's1', ...segment, plannedAt: START },
    { id: 'b1', kind: 'break', lengthMs: 10 * MINUTE },
    { id: 's2', ...segment },
  ]
  log.adopt('rules', { name: 'On paper', timeZone: 'UTC', programme, rules })
  const people = [ADA, BEN, CHO].map((id, i) => ({
    id,
    name: ['Ada', 'Ben', 'Cho'][i] ?? '',
    duties: [],
    ...(paceMs === undefined ? {} : { paceMs }),
  }))
  log.adopt('crew', { people })
  log.add(0, 'green.1', { segment: 's1' })
  log.add(0, 'handover.1', { moves: [{ person: ADA, duty: 'controller' }] })
  return log
}

test('a penalty in laps needs a number first, a warning none', () => {
  const { meeting, model, sheets } = wall(running(), 20)
  model.press('said', 5)
  expect(sheets.penaltyTiles(undefined)[1]).toMatchObject({ word: 'Laps', off: true })
  expect(sheets.penaltyTiles(2)[1]).toEqual({ id: 'laps', word: '−2 laps' })
  const off = (amount?: number) =>
    sheets.penaltyTiles(amount).flatMap((tile) => (tile.off === true ? tile.id : []))
  expect(off()).toEqual(['laps', 'secondsHeld'])
  // A place lost may be said without how many, and a stop-and-go of 0 s is one.
  expect(off(0)).toEqual(['laps', 'secondsHeld', 'position'])
  expect(off(1)).toEqual([])
  sheets.penalty('laps', 2)
  expect(model.sheet).toBeUndefined()
  expect(meeting.last).toEqual({
    kind: 'penalty.1',
    body: { what: 'laps', scope: 'race', laps: 2 },
  })
  expect(model.said[0]?.words).toBe('Penalty: 2 laps')
})

test('how far a penalty counts is what the rules say of it', () => {
  const rule = { for: 'Wrong lane', is: 'laps', per: 'occurrence', scope: 'segment' } as const
  const { meeting, sheets } = wall(ruled([{ id: 'p', kind: 'penalty', value: rule }]), 20)
  sheets.penalty('laps', 1)
  expect(meeting.last?.body).toMatchObject({ scope: 'segment' })
})

test('a penalty to serve is the card, with its one press; then it may still be protested', () => {
  const rule = {
    for: 'Early',
    is: 'stopAndGo',
    per: 'occurrence',
    scope: 'race',
    withinLaps: 5,
    contestableMs: 30 * MINUTE,
  } as const
  const log = ruled([{ id: 'p', kind: 'penalty', value: rule }], 10_000)
  const penalty = log.add(20, 'penalty.1', { what: 'stopAndGo', heldMs: 10_000, scope: 'race' })
  // 5 laps of 10 s = 50 s; 20 s gone.
  const { meeting, model, sheets } = wall(log, 20 + 20 / 60)
  expect(model.card).toMatchObject({
    what: 'Serve the stop-and-go',
    label: 'due in, estimated',
    figure: '0:30',
    press: 'Served',
    lit: true,
  })
  expect(sheets.openPenalties).toEqual([
    {
      id: penalty,
      words: '11:20 Stop-and-go, 10 s',
      so: 'to be served within 5 laps, about 0:30 left, estimated · protest until 11:50',
      toServe: true,
      contested: false,
    },
  ])
  sheets.aboutPenalty(penalty, 'wrong')
  expect(meeting.last).toEqual({
    kind: 'note.1',
    body: { words: 'We think this penalty is wrong', about: penalty },
  })
  expect(sheets.openPenalties[0]).toMatchObject({ contested: true })
  model.pressDue(model.card?.id ?? '')
  expect(meeting.last).toEqual({ kind: 'penaltyServed.1', body: { penalty } })
  expect(sheets.openPenalties).toEqual([])
})

test('without a pace a penalty to serve has no figure that would be made up', () => {
  const log = running()
  log.add(20, 'penalty.1', { what: 'driveThrough', scope: 'race' })
  const { model } = wall(log, 21)
  expect(model.card).toMatchObject({ label: 'at the next opportunity', urgency: 'now' })
  expect(model.card?.figure).toBeUndefined()
})

test('laps corrected, a ruling and a later programme are one press each', () => {
  const { meeting, sheets } = wall(running(), 20)
  sheets.correctLaps('-1', 3)
  expect(meeting.last).toEqual({ kind: 'lapsCorrected.1', body: { laps: -3 } })
  sheets.ruling('Hands off the car')
  expect(meeting.last).toEqual({ kind: 'ruling.1', body: { words: 'Hands off the car' } })
  sheets.later('10')
  // What comes after the running segment: 10 min = 600 000 ms.
  expect(meeting.last).toEqual({
    kind: 'programmeMoved.1',
    body: { fromItem: 's2', byMs: 600_000 },
  })
})

test('a standing read off the screen is at the race clock, with whole laps while cars run', () => {
  const { meeting, model, sheets } = wall(running(), 20)
  expect(sheets.standing.fields).toEqual(['place', 'ours', 'ahead', 'behind'])
  expect(sheets.canStand({ place: '3' })).toBe(false)
  sheets.stand({ place: '3', ours: '120', ahead: '122', behind: '119' })
  expect(meeting.last).toEqual({
    kind: 'classification.1',
    body: {
      standing: 'provisional',
      scope: 'whole',
      segment: 's1',
      // 20 min = 1 200 000 ms
      asAtClockMs: 1_200_000,
      lines: [
        { place: 2, entrant: 'Ahead of us', laps: 122 },
        { place: 3, entrant: 'We', laps: 120, ours: true },
        { place: 4, entrant: 'Behind us', laps: 119 },
      ],
    },
  })
  expect(model.facts[0]).toEqual({
    label: 'Standing as at 20:00 gone',
    value: '3rd, 120',
    under: '2 laps behind 2nd, 1 lap ahead of 4th',
    speaks: true,
    press: 'standing',
  })
})

test('the place read last stays until another is typed; a penalty since is taken in', () => {
  const { meeting, model, sheets } = wall(running(), 20)
  sheets.stand({ place: '1', ours: '120', ahead: '9', behind: '119' })
  expect(meeting.last?.body).toMatchObject({ lines: [{ place: 1 }, { place: 2 }] })
  meeting.at(21)
  sheets.penalty('laps', 2)
  // 120 − 2 = 118, one behind the 119 of the second.
  expect(model.facts[0]).toMatchObject({ value: '1st, 118', under: '1 lap behind 2nd' })
  expect(sheets.canStand({ ours: '130' })).toBe(true)
})

test('sections are asked for where no cars run', () => {
  const log = running()
  log.add(120, 'segmentEnd.1', { segment: 's1' })
  expect(wall(log, 121).sheets.standing.fields).toContain('oursSection')
})

test('a reading is typed first, then one press says of what, and the sheet stays', () => {
  const { meeting, model, sheets } = wall(running(), 20)
  model.open('measure')
  expect(sheets.quantities(undefined)[0]).toEqual({
    id: 'Clearance',
    word: 'Clearance, mm',
    hint: 'not measured yet',
    off: true,
  })
  sheets.measure('Clearance', 1_050)
  expect(meeting.last).toEqual({
    kind: 'measured.1',
    body: { quantity: 'Clearance', unit: 'mm', valueMilli: 1_050 },
  })
  expect(model.sheet).toBe('measure')
  expect(sheets.quantities(800)[0]).toMatchObject({ hint: 'last 1.05 mm, 11:20', off: false })
})

test('work is the open faults, then the car’s list, ticked and unticked', () => {
  const log = prepared('car')
  log.adopt('car', { name: 'Car', faultTiles: [], betweenWork: ['Oil the bearings'] })
  log.add(0, 'green.1', { segment: 's1' })
  const fault = log.add(100, 'faultNoted.1', { fault: 'Lights' })
  log.add(120, 'segmentEnd.1', { segment: 's1' })
  const { meeting, sheets } = wall(log, 121)
  expect(sheets.work).toEqual([
    { id: fault, word: 'Lights', done: false, isFault: true },
    { id: 'work Oil the bearings', word: 'Oil the bearings', done: false, isFault: false },
  ])
  const oil = () => sheets.work[1] ?? expect.fail()
  sheets.tick(oil())
  expect(oil().done).toBe(true)
  sheets.tick(oil())
  expect(meeting.last).toEqual({
    kind: 'workTicked.1',
    body: { work: 'Oil the bearings', done: false },
  })
  sheets.tick(sheets.work[0] ?? expect.fail())
  expect(meeting.last).toEqual({ kind: 'repairFinished.1', body: { fault } })
})

test('a lane is drawn for the next segment, or the car sits out', () => {
  const lanes = { tracks: 1, lanes: 4 }
  const log = ruled([
    { id: 't', kind: 'tracks', value: lanes },
    { id: 's', kind: 'startingLane', value: { by: 'draw' } },
  ])
  const { meeting, model, sheets } = wall(log, 20)
  expect(model.lanes).toBe('Lanes to come: not drawn yet')
  expect(sheets.lanes.segments).toEqual([{ id: 's2', word: 'Segment 2', hint: 'not drawn yet' }])
  expect(sheets.lanes.lanes.map(({ word }) => word)).toEqual([
    'Lane 1',
    'Lane 2',
    'Lane 3',
    'Lane 4',
    'Sit-out',
  ])
  sheets.draw('s2', '3')
  expect(meeting.last).toEqual({ kind: 'laneDrawn.1', body: { segment: 's2', lane: 3 } })
  expect(model.lanes).toBe('Lanes to come: lane 3')
  sheets.draw('s2', 'sitOut')
  expect(meeting.last?.body).toEqual({ segment: 's2', lane: null })
})

test('a part says what is left and what the next one costs before it is fitted', () => {
  const tyres = { of: 'tyreSets', count: 2, when: 'freely', costLaps: 5 } as const
  const motors = { of: 'motors', count: 1, when: 'onFailure' } as const
  const log = ruled([
    { id: 't', kind: 'allowance', value: tyres },
    { id: 'm', kind: 'allowance', value: motors },
  ])
  const { meeting, sheets } = wall(log, 20)
  expect(sheets.parts).toEqual([
    { id: 'tyreSets', word: 'Tyre set', hint: '1 of 2 used, 1 left' },
    {
      id: 'motors',
      word: 'Motor',
      hint: '1 of 1 used, no further one is allowed, only after a failure',
    },
  ])
  sheets.fitPart('tyreSets')
  expect(meeting.last).toEqual({
    kind: 'partFitted.1',
    body: { position: 'Tyres', part: 'Tyre set', allowance: 'tyreSets' },
  })
  expect(sheets.parts[0]?.hint).toBe('2 of 2 used, the next one costs 5 laps')
})

test('energy is read or estimated, and filled by one press', () => {
  const value = { fullLaps: 60, atEmpty: 'stands' } as const
  const log = ruled([{ id: 'e', kind: 'energy', value }], 10_000)
  const { meeting, model, sheets } = wall(log, 2)
  // Two minutes of 10 s a lap are 12 laps of 60: 48 laps, 480 s.
  expect(model.energy).toEqual({
    words: 'Energy: about 48 laps, 8:00',
    basis: 'estimated since the start 11:00',
  })
  sheets.readEnergy('laps', 40)
  expect(model.energy).toEqual({ words: 'Energy: 40 laps, 6:40', basis: 'read 11:02' })
  model.fill()
  expect(meeting.last).toEqual({ kind: 'energy.1', body: { what: 'filled' } })
  expect(model.energy?.words).toBe('Energy: 60 laps, 10:00')
})

test('without a pace energy in laps says how many there were, and that the time is not known', () => {
  const value = { fullLaps: 60, atEmpty: 'stands' } as const
  const { model, sheets, meeting } = wall(ruled([{ id: 'e', kind: 'energy', value }]), 2)
  expect(model.energy).toEqual({
    words: 'Energy: 60 laps left on this load at 11:00',
    basis: 'the start 11:00; time not known: no pace',
  })
  sheets.readEnergy('laps', 12)
  expect(model.energy).toEqual({
    words: 'Energy: 12 laps left on this load',
    basis: 'read 11:02; time not known: no pace',
  })
  meeting.at(3)
  expect(model.energy?.words).toBe('Energy: 12 laps left on this load at 11:02')
})
