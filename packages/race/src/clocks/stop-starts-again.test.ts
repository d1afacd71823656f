import { expect, test } from 'vitest'
import { obligations } from '../obligations/obligations.ts'
import type { Rule } from '../rules/index.ts'
import { GREEN } from '../testing/pressing.ts'
import { MINUTE, policy, SECOND, smallMeeting } from '../testing/small-meeting.ts'
import { stopClock } from './stop-clock.ts'

const rules: readonly Rule[] = [
  { id: 'owed', kind: 'mandatoryStops', value: { count: 1, per: 'segment' } },
  {
    id: 'least',
    kind: 'stopMinimum',
    value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' },
  },
  policy('stopMinimum', 'startsAgain'),
]

/** Stopped at 1:00, the power off from 1:20 to 1:50. */
function stopped() {
  const pressing = smallMeeting({ rules })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + MINUTE, 'stopIn.1', { moment: 'stopped' })
  pressing.press(GREEN + 80 * SECOND, 'trackCall.1', {})
  return pressing
}

test('L39: while the call lasts the whole minimum remains, and there is no GO', () => {
  const state = stopped().state()
  for (const second of [80, 100, 200]) {
    const clock = stopClock(state, GREEN + second * SECOND)
    expect(clock).toMatchObject({
      running: false,
      assumed: false,
      elapsedMs: (second - 60) * SECOND,
    })
    expect(clock?.goAt).toBeUndefined()
  }
  expect(stopClock(state, GREEN + 100 * SECOND)?.remainingMs).toBe(60_000)
  const go = obligations(state, GREEN + 100 * SECOND).find((one) => one.kind === 'stopGo')
  // 1:00 and the captain’s 2 s from now, sliding.
  expect(go).toMatchObject({ held: true, dueAt: GREEN + 162 * SECOND, lengthMs: 62_000 })
})

test('L39: it counts anew from the end of the call', () => {
  const pressing = stopped()
  pressing.press(GREEN + 110 * SECOND, 'powerOn.1', {})
  expect(stopClock(pressing.state(), GREEN + 120 * SECOND)).toMatchObject({
    ...{ running: true, remainingMs: 50_000, startedAgainAt: GREEN + 110 * SECOND },
    // 1:50 + 1:00 + 2 s.
    ...{ countedFrom: GREEN + MINUTE, goAt: GREEN + 172 * SECOND },
  })
})
