import { expect, test } from 'vitest'
import { running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { WallModel } from '../wall/wall-model.svelte.ts'
import { OutModel } from './out-model.svelte.ts'

function outAt(minutes: number, log = running()) {
  const meeting = new PaperMeeting(log, minutes)
  const wall = new WallModel(() => meeting)
  const model = new OutModel(
    () => meeting,
    () => wall,
  )
  const words = () => model.verbs.map(({ word }) => word)
  return { meeting, model, words }
}

test('beside Car in stands, quietly, the pit entry that does not count', () => {
  const { meeting, model, words } = outAt(39)
  expect(words()).toEqual(['Car in', 'Pit entry'])
  model.press('pitEntry', 1)
  expect(meeting.last).toEqual({ kind: 'stopIn.1', body: { moment: 'pitEntry' } })
})

test('after the car has left, its pit exit may be said for two minutes', () => {
  const log = running()
  log.add(39, 'stopIn.1', { moment: 'stopped', planned: 's1p1' })
  log.add(40, 'stopOut.1', { moment: 'leaving' })
  const { meeting, model, words } = outAt(40.5, log)
  expect(words()).toEqual(['Car in', 'Pit entry', 'Pit exit'])
  // 60 − 45 = 15 s.
  expect(model.verdict?.words).toBe('Left 15 s after the minimum, 1:00 of 45 s.')
  model.press('pitExit', 2)
  expect(meeting.last).toEqual({ kind: 'stopOut.1', body: { moment: 'pitExit' } })
  expect(words()).toEqual(['Car in', 'Pit entry'])
  meeting.at(42.1)
  expect(outAt(42.1, log).words()).toEqual(['Car in', 'Pit entry'])
})

test('where the minimum counts to the pit exit, that is the verb that is meant', () => {
  const log = running('rules')
  log.adopt('rules', {
    name: 'Counted at the pit lane',
    timeZone: 'UTC',
    programme: [{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 7_200_000 } }],
    rules: [
      { id: 'r1', kind: 'mandatoryStops', value: { count: 2, per: 'segment' } },
      {
        id: 'r2',
        kind: 'stopMinimum',
        value: { minimumMs: 60_000, from: 'pitEntry', to: 'pitExit' },
      },
      {
        id: 'r3',
        kind: 'penalty',
        clause: '9.2',
        value: {
          for: 'Stop left early',
          is: 'laps',
          amount: 2,
          per: 'secondShort',
          scope: 'race',
        },
      },
    ],
  })
  log.add(39, 'stopIn.1', { moment: 'pitEntry', planned: 's1p1' })
  log.add(39.2, 'stopIn.1', { moment: 'stopped' })
  log.add(39.8, 'stopOut.1', { moment: 'leaving' })
  const { meeting, model } = outAt(39.9, log)
  expect(model.verbs[0]).toEqual({ id: 'pitExit', word: 'Pit exit', first: true })
  expect(model.verdict?.words).toBe(
    'How long the stop was cannot be told: pit exit was not recorded.',
  )
  // 57 s of 60: three seconds short, two laps each.
  meeting.at(39.95)
  model.press('pitExit', 0)
  expect(model.verdict).toMatchObject({
    words: 'Left 3 s early, 57 s of 1:00.',
    cost: 'It costs 6 laps (9.2).',
  })
})
