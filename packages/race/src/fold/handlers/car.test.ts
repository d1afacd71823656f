import { expect, test } from 'vitest'
import { dutyOf } from '../../clocks/duties.ts'
import { PEOPLE } from '../../testing/ids.ts'
import { GREEN, type Pressing } from '../../testing/pressing.ts'
import { MINUTE, SECOND, smallMeeting } from '../../testing/small-meeting.ts'

function running(): Pressing {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}
const sentences = (pressing: Pressing) => pressing.state().problems.map(({ sentence }) => sentence)

test('L26: four moments make one visit', () => {
  const pressing = running()
  const at = GREEN + 5 * MINUTE
  const first = pressing.press(at, 'stopIn.1', { moment: 'pitEntry', planned: 'stop-1' })
  pressing.press(at + 4 * SECOND, 'stopIn.1', { moment: 'stopped' })
  pressing.press(at + 60 * SECOND, 'stopOut.1', { moment: 'leaving' })
  pressing.press(at + 63 * SECOND, 'stopOut.1', { moment: 'pitExit' })
  const state = pressing.state()
  expect(state.car.stops).toMatchObject([
    {
      ...{ entry: first, segment: 'one', planned: 'stop-1' },
      moments: {
        pitEntry: { at },
        stopped: { at: at + 4_000 },
        leaving: { at: at + 60_000 },
        pitExit: { at: at + 63_000 },
      },
    },
  ])
  expect(state.problems).toEqual([])
})

test('L26: a car that comes in again makes another visit', () => {
  const pressing = running()
  for (const minute of [5, 8]) {
    pressing.press(GREEN + minute * MINUTE, 'stopIn.1', { moment: 'stopped' })
    pressing.press(GREEN + (minute + 1) * MINUTE, 'stopOut.1', { moment: 'leaving' })
  }
  expect(pressing.state().car.stops).toHaveLength(2)
})

test('L26: in while in and out while out are listed, out without in is a visit of its own', () => {
  const pressing = running()
  pressing.press(GREEN + MINUTE, 'stopOut.1', { moment: 'leaving' })
  pressing.press(GREEN + 2 * MINUTE, 'stopOut.1', { moment: 'leaving' })
  pressing.press(GREEN + 3 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 4 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 5 * MINUTE, 'stopIn.1', { moment: 'pitEntry' })
  expect(sentences(pressing)).toEqual([
    'The car went out without having come in.',
    'The car was already out.',
    'The car was already in.',
    'The car came into the pits after it had stopped there.',
  ])
  expect(pressing.state().car.stops).toHaveLength(2)
})

test('L27: a stop out hands over and mends what was worked on', () => {
  const pressing = running()
  const fault = pressing.press(GREEN + MINUTE, 'faultNoted.1', { fault: 'Braid' })
  pressing.press(GREEN + 5 * MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 5 * MINUTE + SECOND, 'repairStarted.1', { fault })
  const out = pressing.press(GREEN + 6 * MINUTE, 'stopOut.1', {
    moment: 'leaving',
    work: [{ what: 'Braid straightened', fault, done: true }],
    moves: [{ person: PEOPLE.Okello, duty: 'controller' }],
  })
  const state = pressing.state()
  expect(state.car.faults).toMatchObject([
    {
      repairs: [{ fromAt: GREEN + 5 * MINUTE + SECOND, toAt: GREEN + 6 * MINUTE }],
      ended: { how: 'mended', at: GREEN + 6 * MINUTE, entry: out },
    },
  ])
  expect(dutyOf(state, PEOPLE.Okello)).toMatchObject({ duty: 'controller', entry: out })
  expect(state.car.stops[0]?.work).toHaveLength(1)
})

test('L28: a repair goes on in several goes, and ends once', () => {
  const pressing = running()
  const fault = pressing.press(GREEN, 'faultNoted.1', { fault: 'Rear tyre', causedBy: 'ours' })
  pressing.press(GREEN + 1 * MINUTE, 'repairStarted.1', { fault })
  pressing.press(GREEN + 2 * MINUTE, 'repairPaused.1', { fault })
  pressing.press(GREEN + 5 * MINUTE, 'repairStarted.1', { fault })
  pressing.press(GREEN + 6 * MINUTE, 'repairFinished.1', { fault })
  pressing.press(GREEN + 7 * MINUTE, 'repairFinished.1', { fault })
  pressing.press(GREEN + 8 * MINUTE, 'repairStarted.1', { fault })
  expect(pressing.state().car.faults).toMatchObject([
    {
      repairs: [
        { fromAt: GREEN + 1 * MINUTE, toAt: GREEN + 2 * MINUTE },
        { fromAt: GREEN + 5 * MINUTE, toAt: GREEN + 6 * MINUTE },
      ],
      ended: { how: 'mended', at: GREEN + 6 * MINUTE },
    },
  ])
  expect(sentences(pressing)).toEqual([
    'Rear tyre: already mended.',
    'Rear tyre: repair began after it was mended.',
  ])
})

test('L28: finished without a start is simply ended', () => {
  const pressing = running()
  const fault = pressing.press(GREEN, 'faultNoted.1', { fault: 'Rear tyre' })
  pressing.press(GREEN + MINUTE, 'repairFinished.1', { fault })
  const state = pressing.state()
  expect(state.car.faults).toMatchObject([{ repairs: [], ended: { how: 'mended' } }])
  expect(state.problems).toEqual([])
})

test('L28: a fault that was left may be taken up again', () => {
  const pressing = running()
  const fault = pressing.press(GREEN, 'faultNoted.1', { fault: 'Rear tyre' })
  pressing.press(GREEN + 1 * MINUTE, 'faultLeft.1', { fault })
  expect(pressing.state().car.faults[0]?.ended?.how).toBe('left')
  pressing.press(GREEN + 2 * MINUTE, 'repairStarted.1', { fault })
  const state = pressing.state()
  expect(state.car.faults[0]).toMatchObject({ repairs: [{ fromAt: GREEN + 2 * MINUTE }] })
  expect(state.car.faults[0]?.ended).toBeUndefined()
  expect(state.problems).toEqual([])
})

test('L28: a repair of nothing is listed', () => {
  const pressing = running()
  pressing.press(GREEN, 'repairStarted.1', { fault: PEOPLE.Imre })
  expect(sentences(pressing)).toEqual(['A repair is of a fault that is not in the log.'])
})
