import { expect, test } from 'vitest'
import { obligations } from '../obligations/obligations.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, smallMeeting } from '../testing/small-meeting.ts'
import { afterTheFlag } from './after-the-flag.ts'

const FLAG = GREEN + 50 * MINUTE

/** Weighed and looked at in the break; the flag at 50:00. */
function flag(protestMs?: number): Pressing {
  const captain = protestMs === undefined ? plan.captain : { ...plan.captain, protestMs }
  const pressing = smallMeeting({ plan: { ...plan, captain } })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  pressing.press(GREEN + 21 * MINUTE, 'scrutineering.1', { when: 'between', verdict: 'failed' })
  weigh(pressing, GREEN + 22 * MINUTE)
  pressing.press(GREEN + 30 * MINUTE, 'green.1', { segment: 'two' })
  classify(pressing, 'provisional', GREEN + 40 * MINUTE)
  pressing.press(FLAG, 'segmentEnd.1', { segment: 'two' })
  return pressing
}

function weigh(pressing: Pressing, at: number): void {
  pressing.press(at, 'measured.1', { quantity: 'Weight', unit: 'g', valueMilli: 190_500 })
}

function classify(pressing: Pressing, standing: 'provisional' | 'official', at: number): string {
  return pressing.press(at, 'classification.1', { standing, scope: 'whole', lines: [] })
}

/** What and state of each step, minutes after the flag, and what comes next. */
function at(pressing: Pressing, minute: number) {
  const after = afterTheFlag(pressing.state(), FLAG + minute * MINUTE)
  return [after?.next, ...(after?.steps.map(({ what, state }) => `${what} ${state}`) ?? [])]
}

test('nothing before the flag', () => {
  const pressing = smallMeeting()
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + 20 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(afterTheFlag(pressing.state(), GREEN + 25 * MINUTE)).toBeUndefined()
})

test('what was before the flag does not count', () => {
  expect(at(flag(), 1)).toEqual([
    'scrutineering',
    'scrutineering wanted',
    'weighing wanted',
    'provisionalResult wanted',
    'officialResult wanted',
    'released wanted',
  ])
})

test('each step with what was said, in order', () => {
  const pressing = flag(30 * MINUTE)
  const after = (minute: number) => FLAG + minute * MINUTE
  pressing.press(after(2), 'scrutineering.1', { when: 'final', verdict: 'passedWithAdvice' })
  weigh(pressing, after(3))
  expect(at(pressing, 3)[0]).toBe('provisionalResult')
  classify(pressing, 'provisional', after(10))
  expect(at(pressing, 11)).toEqual([
    'protestTime',
    'scrutineering done',
    'weighing done',
    'provisionalResult done',
    'protestTime counting',
    'officialResult wanted',
    'released wanted',
  ])
  expect(afterTheFlag(pressing.state(), after(11))?.steps).toMatchObject([
    { at: after(2), advice: true },
    { at: after(3), valueMilli: 190_500 },
    { at: after(10) },
    // 10 and 30.
    { at: after(10), until: after(40) },
    {},
    {},
  ])
  expect(at(pressing, 40)[0]).toBe('officialResult')
  classify(pressing, 'official', after(41))
  pressing.press(after(45), 'released.1', {})
  expect(at(pressing, 46)).toEqual([
    undefined,
    'scrutineering done',
    'weighing done',
    'provisionalResult done',
    'protestTime done',
    'officialResult done',
    'released done',
  ])
})

test('failed is said, and what follows is next', () => {
  const pressing = flag()
  pressing.press(FLAG + MINUTE, 'scrutineering.1', { when: 'final', verdict: 'failed' })
  expect(at(pressing, 2).slice(0, 2)).toEqual(['weighing', 'scrutineering failed'])
})

test('protest time is that of penalties too, and is listed only where it is known', () => {
  const pressing = flag()
  classify(pressing, 'provisional', FLAG + 5 * MINUTE)
  expect(at(pressing, 6)).not.toContain('protestTime counting')
  pressing.press(FLAG + 6 * MINUTE, 'penalty.1', {
    ...{ what: 'laps', laps: 5, scope: 'race', contestableUntil: FLAG + 21 * MINUTE },
  })
  expect(at(pressing, 7)).toContain('protestTime counting')
  expect(at(pressing, 21)).toContain('protestTime done')
})

test('the protest against the result falls due until it is over or the result is official', () => {
  const pressing = flag(30 * MINUTE)
  const due = (minute: number) =>
    obligations(pressing.state(), FLAG + minute * MINUTE).find(({ kind }) => kind === 'protestEnds')
  expect(due(4)).toBeUndefined()
  const result = classify(pressing, 'provisional', FLAG + 5 * MINUTE)
  expect(due(6)).toMatchObject({
    ...{ id: `protestEnds:${result}`, dueAt: FLAG + 35 * MINUTE, lengthMs: 30 * MINUTE },
  })
  expect(due(35)).toBeUndefined()
  classify(pressing, 'official', FLAG + 20 * MINUTE)
  expect(due(21)).toBeUndefined()
})
