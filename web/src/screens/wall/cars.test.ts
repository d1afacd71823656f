import { expect, test } from 'vitest'
import { running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { carExchanged, carsShown, exchangeTiles } from './cars.ts'

test('running time goes to the car that runs, and back again', () => {
  const meeting = new PaperMeeting(running(), 30)
  expect(exchangeTiles(meeting.state, meeting.now)).toEqual([
    { id: 'Spare car', word: 'Spare car' },
  ])
  meeting.press('carExchanged.1', { car: 'Spare car' })
  meeting.at(40)
  // Green at 11:00: thirty minutes for the first, ten for the spare.
  expect(carsShown(meeting.state, meeting.now)).toEqual([
    { car: 'Car', words: '0:30 run', parts: [] },
    { car: 'Spare car', words: 'on track, 0:10 run', parts: [] },
  ])
  expect(exchangeTiles(meeting.state, meeting.now)).toEqual([{ id: 'Car', word: 'Car' }])
  expect(carExchanged('Car')).toEqual({
    ...{ kind: 'carExchanged.1', body: { car: 'Car' }, word: 'Car on track' },
  })
})

test('what is fitted runs with its car', () => {
  const log = running()
  log.add(10, 'partFitted.1', { position: 'Rear', part: 'Set B' })
  const meeting = new PaperMeeting(log, 25)
  expect(carsShown(meeting.state, meeting.now)[0]?.parts).toEqual([
    { id: 'Rear Set B', words: 'Rear: Set B, 0:15 run' },
  ])
})
