import { expect, test } from 'vitest'
import { BEN, CHO, MINUTE, running, START } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { WallModel } from './wall-model.svelte.ts'
import { WallSheets } from './wall-sheets.svelte.ts'

function wall(log: ConstructorParameters<typeof PaperMeeting>[0], minutes: number) {
  const meeting = new PaperMeeting(log, minutes)
  const model = new WallModel(() => meeting)
  const sheets = new WallSheets(
    () => model,
    () => meeting,
  )
  return { meeting, model, sheets }
}

test('somebody is late until about when, and it stands beside the name', () => {
  const { meeting, model, sheets } = wall(running(), 20)
  model.open('person', BEN)
  expect(sheets.person).toMatchObject({ name: 'Ben', words: 'nothing said' })
  sheets.say(BEN, 'late', 20)
  // 11:20 and 20 min = 11:40: START + 40 × 60 000.
  expect(meeting.last).toEqual({
    kind: 'availability.1',
    body: { person: BEN, state: 'late', until: START + 40 * MINUTE },
  })
  expect(model.sheet).toBeUndefined()
  expect(model.duties[0]).toMatchObject({ name: 'Ben', presence: 'late until 11:40' })
  sheets.sayOn(BEN, 'here')
  expect(model.duties[0]?.presence).toBeUndefined()
  expect(model.rest).toEqual([{ id: CHO, name: 'Cho', presence: undefined }])
})

test('a wake-up call is ahead, then waits for an answer, is repeated and passes on', () => {
  const { meeting, model, sheets } = wall(running(), 20)
  sheets.wake(BEN, 15)
  expect(meeting.last?.body).toMatchObject({ person: BEN, dueAt: START + 35 * MINUTE })
  expect(model.calls).toMatchObject([{ words: 'Wake-up call 11:35: Ben', ahead: true }])
  expect(model.litCall).toBeUndefined()
  // Repeated every 20 s, passed on after 60 s to whoever is off duty: Cho.
  meeting.at(35 + 65 / 60)
  expect(model.calls).toMatchObject([
    {
      words: '11:35 to Ben: Time to get up',
      so: 'called 4 times, passed on to Cho',
      ahead: false,
    },
  ])
})

test('staying out says what the rules allow and whom it moves, and is recorded by one press', async () => {
  const log = running('rules')
  const value = { atMostMs: 47 * MINUTE }
  const segment = { kind: 'segment', length: { by: 'time', lengthMs: 120 * MINUTE } } as const
  log.adopt('rules', {
    name: 'On paper',
    timeZone: 'UTC',
    programme: [{ id: 's1', ...segment }],
    rules: [{ id: 'c', kind: 'continuousDriving', value }],
  })
  const { meeting, model, sheets } = wall(log, 30)
  expect(sheets.stayKnown).toBe(false)
  model.open('stint')
  await sheets.fetchStay()
  // Planned end 40 min, at most 47: 7 min more.
  expect(sheets.stay).toMatchObject({
    who: 'Ada, change about 11:40',
    allowed: 'The rules allow 7 min more',
    choices: [
      { word: 'Stay out 5 min more', hint: 'the rules allow it', breaks: [] },
      { word: 'Stay out 10 min more', hint: 'breaks a rule' },
    ],
  })
  const [five] = sheets.stay?.choices ?? []
  expect(five?.moves).toEqual([
    'Ada, controller: ends 5 min later',
    'Ben, controller: begins 5 min later',
    'Cho, post 4: begins 5 min later',
  ])
  if (five) sheets.stayOut(five.records)
  expect(meeting.last).toEqual({
    kind: 'stayOut.1',
    body: { segment: 's1', boundaryMs: 40 * MINUTE, byMs: 5 * MINUTE },
  })
  // 45 − 30 = 15 minutes to go.
  expect(model.stint).toMatchObject({ figure: '15:00', plannedEnd: 'planned end 11:45' })
})
