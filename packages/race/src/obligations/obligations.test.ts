import { describe, expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import type { Plan } from '../documents/plan.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, Pressing } from '../testing/pressing.ts'
import {
  adopt,
  MINUTE,
  plan,
  policy,
  regulations,
  SECOND,
  smallMeeting,
} from '../testing/small-meeting.ts'
import { alertsBetween } from './alerts.ts'
import { obligations } from './obligations.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE
const window: Rule = {
  id: 'when',
  kind: 'stopWindows',
  value: { windows: [{ id: 'w', segment: 'one', fromMs: 300_000, toMs: 900_000 }] },
}

function running(rules: readonly Rule[] = [], withPlan: Plan = plan): Pressing {
  const pressing = smallMeeting({ rules, plan: withPlan })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

/** Minutes after green with labels. */
function due(pressing: Pressing, minute: number) {
  const list = obligations(pressing.state(), GREEN + minute * MINUTE)
  return list.map(({ dueAt, label }) => [(dueAt - GREEN) / MINUTE, label])
}

function find(pressing: Pressing, minute: number, kind: string) {
  return obligations(pressing.state(), GREEN + minute * MINUTE).find((one) => one.kind === kind)
}

describe('what falls due', () => {
  test('is named plainly, soonest first', () => {
    const stops: Plan['stops'] = [
      { id: 'p', segment: 'one', atMs: 600_000, mandatory: true, task: 'Change to Okello' },
      { id: 'q', segment: 'two', atMs: 300_000, mandatory: false },
    ]
    expect(due(running([window], { ...plan, stops }), 1)).toEqual([
      [5, 'Mandatory stop: window opens'],
      [10, 'Tamsin to post 4'],
      [10, 'Okello drives'],
      [10, 'Imre to the wall'],
      [10, 'Mandatory stop: Change to Okello'],
      [10, 'Tamsin relieves Imre at post 4'],
      [10, 'Solveig’s stint ends'],
      [20, 'Segment 1 ends'],
      // The second segment about at 30.
      [35, 'Planned stop'],
    ])
  })

  test('has its whole length for the wick, where that is known', () => {
    const stops: Plan['stops'] = [
      { id: 'p', segment: 'one', atMs: 600_000, mandatory: true },
      { id: 'q', segment: 'one', atMs: 780_000, mandatory: false },
    ]
    const list = obligations(running([window], { ...plan, stops }).state(), GREEN + MINUTE)
    const lengths = list.map(({ id, lengthMs }) => [
      id.replace(/:.*/, ''),
      (lengthMs ?? 0) / MINUTE,
    ])
    expect(lengths).toEqual([
      ['stopWindowOpens', 5],
      ['nextDuty', 10],
      ['nextDuty', 10],
      ['nextDuty', 10],
      ['plannedStop', 10],
      ['relief', 10],
      ['stintEnd', 10],
      // Since the stop before it.
      ['plannedStop', 3],
      ['segmentEnd', 20],
    ])
  })

  test('concerns those it is about', () => {
    const list = obligations(running().state(), GREEN + MINUTE)
    const concerns = Object.fromEntries(list.map((one) => [one.label, one.concerns]))
    expect(concerns).toEqual({
      'Okello drives': [Okello],
      'Tamsin to post 4': [Tamsin],
      'Imre to the wall': [Imre],
      'Tamsin relieves Imre at post 4': [Imre],
      'Solveig’s stint ends': [Solveig],
      'Segment 1 ends': [Solveig, Imre, Tamsin],
    })
  })

  test('the last segment ends with the flag', () => {
    const pressing = smallMeeting({ plan: null })
    pressing.press(GREEN, 'green.1', { segment: 'two' })
    expect(due(pressing, 1)).toEqual([[20, 'Flag']])
  })
})

describe('what is over and done with', () => {
  test('a window closes once it is open, and is done with once a car came in for it', () => {
    const pressing = running([window])
    const open = find(pressing, 6, 'stopWindowCloses')
    expect(open).toMatchObject({ dueAt: GREEN + 15 * MINUTE, lengthMs: 10 * MINUTE })
    expect(find(pressing, 6, 'stopWindowOpens')).toBeUndefined()
    pressing.press(GREEN + 7 * MINUTE, 'stopIn.1', { moment: 'stopped' })
    expect(find(pressing, 8, 'stopWindowCloses')).toBeUndefined()
  })

  test('a planned stop is done once a visit names it, or a mandatory one serves in its place', () => {
    const stops: Plan['stops'] = [
      { id: 'p', segment: 'one', atMs: 600_000, mandatory: true },
      { id: 'q', segment: 'one', atMs: 700_000, mandatory: false },
    ]
    const pressing = running([window], { ...plan, stops })
    const planned = () =>
      obligations(pressing.state(), GREEN + 9 * MINUTE).filter((one) => one.kind === 'plannedStop')
    expect(planned().map(({ id }) => id)).toEqual(['plannedStop:p', 'plannedStop:q'])
    pressing.press(GREEN + 6 * MINUTE, 'stopIn.1', { moment: 'stopped' })
    pressing.press(GREEN + 7 * MINUTE, 'stopOut.1', { moment: 'leaving' })
    expect(planned().map(({ id }) => id)).toEqual(['plannedStop:q'])
    pressing.press(GREEN + 8 * MINUTE, 'stopIn.1', { moment: 'stopped', planned: 'q' })
    expect(planned()).toEqual([])
  })

  test('who waits where the segment wants them owes nothing more, a driver is to be ready', () => {
    const pressing = smallMeeting()
    const moves = [
      { person: Solveig, duty: 'controller' as const },
      { person: Imre, duty: 'post' as const, post: '4' },
    ]
    expect(due(pressing, -5).map(([, label]) => label)).toEqual([
      'Imre to post 4',
      'Solveig drives',
      'Tamsin to the wall',
      'Okello drives',
    ])
    pressing.press(GREEN - 6 * MINUTE, 'handover.1', { moves })
    expect(due(pressing, -5).map(([, label]) => label)).toEqual([
      'Solveig drives',
      'Tamsin to the wall',
      'Okello drives',
    ])
  })

  test('the hall’s clock is to be read once ours is less sure than the captain allows', () => {
    const pressing = running([policy('segment', 'holds')])
    // Green and four presses: 5,000 ms, which is allowed; one more is not.
    for (const second of [10, 20, 30, 40]) {
      const kind = second % 20 === 0 ? 'powerOn.1' : 'trackCall.1'
      pressing.press(GREEN + second * SECOND, kind, {})
    }
    expect(find(pressing, 1, 'readTheClock')).toBeUndefined()
    pressing.press(GREEN + 50 * SECOND, 'trackCall.1', {})
    expect(find(pressing, 1, 'readTheClock')).toMatchObject({ dueAt: GREEN + 50 * SECOND })
    const reading = { segment: 'one', shows: 'gone', readingMs: 30_000 } as const
    pressing.press(GREEN + 55 * SECOND, 'clockRead.1', reading)
    expect(find(pressing, 1, 'readTheClock')).toBeUndefined()
  })
})

describe('while the clock stands', () => {
  const kinds = ['nextDuty', 'relief', 'segmentEnd', 'stintEnd', 'stopWindowOpens']
  const called = (does: 'runs' | 'holds') => {
    const pressing = running([window, policy('segment', does)])
    pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
    return obligations(pressing.state(), GREEN + 4 * MINUTE)
  }

  test('L29: due times slide and are held', () => {
    const held = called('holds').filter((one) => one.held)
    expect([...new Set(held.map(({ kind }) => kind))].sort()).toEqual(kinds)
    // 10:00 on a clock that stands at 2:00 since two minutes ago.
    expect(held.find(({ kind }) => kind === 'stintEnd')?.dueAt).toBe(GREEN + 12 * MINUTE)
  })

  test('L29: where it runs on, nothing is held and nothing slides', () => {
    const list = called('runs')
    expect(list.filter((one) => one.held)).toEqual([])
    expect(list.find(({ kind }) => kind === 'stintEnd')?.dueAt).toBe(GREEN + 10 * MINUTE)
  })

  test('L29: held obligations sound no alert', () => {
    const sounding = (does: 'runs' | 'holds') =>
      alertsBetween(called(does), GREEN, GREEN + 20 * MINUTE).map(
        ({ obligation }) => obligation.kind,
      )
    expect(sounding('holds')).toEqual([])
    expect([...new Set(sounding('runs'))].sort()).toEqual(kinds)
  })

  test('L29: what the organiser named a time for does not wait for a segment that stands', () => {
    const pressing = new Pressing()
    const programme = regulations().programme.map((item) =>
      item.id === 'two' ? { ...item, plannedAt: GREEN + 60 * MINUTE } : item,
    )
    const stops = [{ id: 'q', segment: 'two', atMs: 300_000, mandatory: false }]
    adopt(pressing, { document: 'rules', content: { ...regulations(), programme } })
    adopt(pressing, { document: 'plan', content: { ...plan, stops } })
    pressing.press(GREEN, 'green.1', { segment: 'one' })
    pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
    // The first segment would end at 22, the break at 32: the second stays at 60.
    expect(find(pressing, 4, 'plannedStop')).toMatchObject({
      dueAt: GREEN + 65 * MINUTE,
      held: false,
    })
    // At 41 the call has lasted too long for that: 18:00 to go, 10:00 of break, 5:00 into the second.
    expect(find(pressing, 41, 'plannedStop')).toMatchObject({
      dueAt: GREEN + 74 * MINUTE,
      held: true,
    })
  })

  test('L29: a segment that waits for its green holds what hangs on it', () => {
    const pressing = smallMeeting()
    const [first] = obligations(pressing.state(), GREEN)
    expect(first).toMatchObject({ kind: 'nextDuty', dueAt: GREEN, held: true })
  })
})
