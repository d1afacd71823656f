import { expect, test } from 'vitest'
import { MINUTE, prepared, type PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { FinishModel } from './finish-model.svelte.ts'

/** The only hour over at 12:00; a result may be protested for half an hour. */
function flagged(): PaperLog {
  const log = prepared('rules', 'plan')
  log.adopt('rules', {
    name: 'One hour',
    timeZone: 'UTC',
    programme: [{ id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 60 * MINUTE } }],
    rules: [{ id: 't', kind: 'tracks', value: { tracks: 1, lanes: 6, sections: 50 } }],
  })
  const captain = {
    goMarginMs: 0,
    askForClockAtMs: 5_000,
    hotWorkInStops: false,
    protestMs: 30 * MINUTE,
  }
  log.adopt('plan', { spans: [], stops: [], captain })
  log.add(0, 'green.1', { segment: 's1' })
  return log
}

function finish(minutes: number, log = flagged()) {
  const meeting = new PaperMeeting(log, minutes)
  const model = new FinishModel(() => meeting)
  const said = () => model.steps.map(({ what, state }) => `${what} ${state}`)
  return { meeting, model, said }
}

function over(): PaperLog {
  const log = flagged()
  log.add(60, 'segmentEnd.1', { segment: 's1' })
  return log
}

test('before the flag nothing is to be done', () => {
  expect(finish(59).model.steps).toEqual([])
})

test('the steps come in order, each with one press', () => {
  const { meeting, model, said } = finish(61, over())
  expect(model.open).toBe('scrutineering')
  model.scrutineered('passedWithAdvice')
  expect(meeting.last).toEqual({
    kind: 'scrutineering.1',
    body: { when: 'final', verdict: 'passedWithAdvice' },
  })
  expect(model.steps[0]).toMatchObject({ words: 'passed with advice 12:01', state: 'done' })

  expect(model.open).toBe('weighing')
  for (const digit of ['9', '2', '4']) model.weight.digit(digit)
  model.weighed()
  expect(meeting.last).toEqual({
    kind: 'measured.1',
    body: { quantity: 'Weight', unit: 'g', valueMilli: 92_400 },
  })
  expect(model.steps[1]?.words).toBe('92.4 g 12:01')

  expect(model.open).toBe('provisionalResult')
  type(model, { place: '2', laps: '412', section: '35' })
  model.classified('provisional')
  expect(meeting.last).toEqual({
    kind: 'classification.1',
    body: {
      standing: 'provisional',
      scope: 'whole',
      lines: [{ place: 2, laps: 412, section: 35, entrant: 'Car', ours: true }],
    },
  })

  expect(said()).toEqual([
    ...['scrutineering done', 'weighing done', 'provisionalResult done'],
    ...['protestTime counting', 'officialResult wanted', 'released wanted'],
  ])
  // Half an hour from 12:01: until then it is opened by hand only.
  expect(model.open).toBeUndefined()
  expect(model.steps.find(({ what }) => what === 'officialResult')?.words).toBe(
    'protest time runs until 12:31',
  )
  model.choose('officialResult')
  expect(model.open).toBe('officialResult')
  model.asItStands()
  expect(meeting.last?.body).toMatchObject({ standing: 'official', lines: [{ laps: 412 }] })
  expect(model.open).toBe('released')
  model.released()
  expect(meeting.last).toEqual({ kind: 'released.1', body: {} })
  expect(model.open).toBeUndefined()
})

test('protest time burns down', () => {
  const log = over()
  const lines = [{ place: 1, entrant: 'Car', laps: 400, section: 12, ours: true }]
  log.add(65, 'classification.1', { standing: 'provisional', scope: 'whole', lines })
  // Until 12:35; after 20 of 30 minutes ten are left.
  const { model } = finish(85, log)
  const protest = model.steps.find(({ what }) => what === 'protestTime')
  expect(protest).toMatchObject({ figure: '10:00', words: 'until 12:35' })
  expect(protest?.left).toBeCloseTo(1 / 3)
})

test('after the protest time the official result lies open', () => {
  const log = over()
  log.add(61, 'scrutineering.1', { when: 'final', verdict: 'passed' })
  log.add(62, 'measured.1', { quantity: 'Weight', unit: 'g', valueMilli: 92_400 })
  const lines = [{ place: 1, entrant: 'Car', laps: 400, ours: true }]
  log.add(65, 'classification.1', { standing: 'provisional', scope: 'whole', lines })
  // From 12:05 half an hour.
  expect(finish(94, log).model.open).toBeUndefined()
  const { model } = finish(95, log)
  expect(model.open).toBe('officialResult')
  expect(model.steps.find(({ what }) => what === 'officialResult')?.words).toBe(
    'once protest time is over',
  )
})

test('official as it stands takes in laps that were given and taken since', () => {
  const log = over()
  const lines = [{ place: 1, entrant: 'Lantern Row', laps: 400, section: 12, ours: true }]
  log.add(65, 'classification.1', { standing: 'provisional', scope: 'whole', lines })
  log.add(70, 'lapsCorrected.1', { laps: 1, sections: 45 })
  const { meeting, model } = finish(71, log)
  model.asItStands()
  // 400 laps and 12 sections, 1 lap and 45 sections more: 57 sections of 50 are a lap and 7.
  expect(meeting.last?.body).toMatchObject({
    standing: 'official',
    lines: [{ place: 1, entrant: 'Lantern Row', laps: 402, section: 7 }],
  })
})

test('a failed car may be seen again', () => {
  const log = over()
  log.add(62, 'scrutineering.1', { when: 'final', verdict: 'failed' })
  const { model } = finish(63, log)
  expect(model.steps[0]).toMatchObject({ state: 'failed', words: 'failed 12:02', next: false })
  model.choose('scrutineering')
  expect(model.open).toBe('scrutineering')
  model.scrutineered('passed')
  expect(model.steps[0]).toMatchObject({ state: 'done' })
})

test('a result wants a place from 1 and laps; a section only where it is known', () => {
  const { model } = finish(61, over())
  expect(model.result.line).toBeUndefined()
  type(model, { place: '0', laps: '5', section: '' })
  expect(model.result.line).toBeUndefined()
  type(model, { place: '3', laps: '0', section: '' })
  expect(model.result.line).toEqual({ place: 3, laps: 0 })
  model.result.choose('section')
  model.result.digit('00')
  expect(model.result.line).toEqual({ place: 3, laps: 0, section: 0 })
  model.result.back()
  expect(model.result.line).toEqual({ place: 3, laps: 0 })
})

function type(
  { result }: FinishModel,
  typed: { readonly place: string; readonly laps: string; readonly section: string },
): void {
  for (const field of ['place', 'laps', 'section'] as const) {
    result.choose(field)
    for (const digit of typed[field]) result.digit(digit)
  }
}
