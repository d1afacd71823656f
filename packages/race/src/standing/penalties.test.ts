import { expect, test } from 'vitest'
import type { Body } from '../entry/kinds/index.ts'
import { obligations } from '../obligations/obligations.ts'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, smallMeeting } from '../testing/small-meeting.ts'
import { penalties } from './penalties.ts'

function running(rules: readonly Rule[] = [], paceMs?: number): Pressing {
  const pressing = smallMeeting({ rules, ...(paceMs === undefined ? {} : { paceMs }) })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

function give(pressing: Pressing, body: Partial<Body<'penalty.1'>>, minute = 5): string {
  return pressing.press(GREEN + minute * MINUTE, 'penalty.1', {
    ...{ what: 'stopAndGo', scope: 'race', ...body },
  })
}

function at(pressing: Pressing, minute: number) {
  return penalties(pressing.state(), GREEN + minute * MINUTE)
}

const serving: Rule = {
  id: 'serve',
  kind: 'servePenalty',
  value: { penalty: 'stopAndGo', withinLaps: 3 },
  clause: '§ 10',
}

test('L42: each is standing, to be served, served or withdrawn', () => {
  const pressing = running()
  const [served, withdrawn] = [give(pressing, {}), give(pressing, { what: 'driveThrough' })]
  give(pressing, { what: 'laps', laps: 5 })
  give(pressing, { what: 'secondsHeld', heldMs: 10_000 })
  pressing.press(GREEN + 6 * MINUTE, 'penaltyServed.1', { penalty: served })
  pressing.press(GREEN + 6 * MINUTE, 'penaltyWithdrawn.1', { penalty: withdrawn })
  const status = at(pressing, 7).map((one) => one.status)
  expect(status).toEqual(['served', 'withdrawn', 'standing', 'toServe'])
})

test('L43: within laps is shown as time at the pace of who drives, counted while the car laps', () => {
  const pressing = running([serving], 20_000)
  give(pressing, {})
  pressing.press(GREEN + 5.5 * MINUTE, 'trackCall.1', {})
  // Three laps of 20 s, of which half a minute was run.
  expect(at(pressing, 7)[0]?.serve).toEqual({
    ...{ withinLaps: 3, lengthMs: 60_000, remainingMs: 30_000, dueAt: GREEN + 7.5 * MINUTE },
    ...{ running: false, estimated: true, clause: '§ 10' },
  })
})

test('race control’s word comes before the rules', () => {
  const pressing = running([serving])
  give(pressing, { serveWithinLaps: 5 })
  expect(at(pressing, 6)[0]?.serve).toEqual({ withinLaps: 5, running: true, estimated: true })
})

test('where no rule is for serving it, the least that a rule for such a penalty says', () => {
  const rule = (id: string, withinLaps: number): Rule => {
    const value = { for: 'Speeding', is: 'stopAndGo', per: 'occurrence', scope: 'race' } as const
    return { id, kind: 'penalty', value: { ...value, withinLaps }, clause: `§ ${id}` }
  }
  const pressing = running([rule('a', 6), rule('b', 4)])
  give(pressing, {})
  expect(at(pressing, 6)[0]?.serve).toMatchObject({ withinLaps: 4, clause: '§ b' })
})

test('its protest ends when race control says, or as long after it as the shortest rule leaves', () => {
  const pressing = running([
    {
      ...{ id: 'a', kind: 'penalty', clause: '§ 11' },
      value: {
        ...{ for: 'Speeding', is: 'laps', per: 'occurrence', scope: 'race' },
        contestableMs: 1_800_000,
      },
    },
  ])
  give(pressing, { what: 'laps', laps: 2 })
  give(pressing, { contestableUntil: GREEN + 25 * MINUTE })
  give(pressing, { what: 'warning' })
  expect(at(pressing, 30).map(({ protest }) => protest)).toEqual([
    { until: GREEN + 35 * MINUTE, lengthMs: 1_800_000, over: false, clause: '§ 11' },
    { until: GREEN + 25 * MINUTE, lengthMs: 1_200_000, over: true },
    undefined,
  ])
})

test('notes about it stand with it', () => {
  const pressing = running()
  const penalty = give(pressing, {})
  const note = pressing.press(GREEN + 6 * MINUTE, 'note.1', { words: 'Not us.', about: penalty })
  pressing.press(GREEN + 6 * MINUTE, 'note.1', { words: 'Marbles in turn 4.' })
  expect(at(pressing, 7)[0]?.notes.map(({ entry }) => entry)).toEqual([note])
})

function due(pressing: Pressing, minute: number, kind: string) {
  return obligations(pressing.state(), GREEN + minute * MINUTE).find((one) => one.kind === kind)
}

test('L42: one to be served falls due with a wick until it is served', () => {
  const pressing = running([serving], 20_000)
  const penalty = give(pressing, {})
  expect(due(pressing, 5.5, 'servePenalty')).toEqual({
    ...{ id: `servePenalty:${penalty}`, kind: 'servePenalty', dueAt: GREEN + 6 * MINUTE },
    ...{ held: false, lengthMs: 60_000, estimated: true, concerns: [PEOPLE.Solveig] },
    label: 'Serve the stop-and-go',
  })
  pressing.press(GREEN + 6 * MINUTE, 'penaltyServed.1', { penalty })
  expect(due(pressing, 6, 'servePenalty')).toBeUndefined()
})

test('L43: without laps or a pace it is due when it was given', () => {
  const pressing = running()
  give(pressing, { what: 'driveThrough' })
  const found = due(pressing, 6, 'servePenalty')
  expect(found).toMatchObject({ dueAt: GREEN + 5 * MINUTE, label: 'Serve the drive-through' })
  expect([found?.lengthMs, found?.estimated]).toEqual([undefined, undefined])
})

test('the deadline of a protest falls due until it is over, or the penalty is withdrawn', () => {
  const pressing = running()
  const penalty = give(pressing, { what: 'laps', contestableUntil: GREEN + 25 * MINUTE })
  expect(due(pressing, 10, 'protestEnds')).toMatchObject({
    ...{ id: `protestEnds:${penalty}`, dueAt: GREEN + 25 * MINUTE, lengthMs: 1_200_000 },
  })
  expect(due(pressing, 25, 'protestEnds')).toBeUndefined()
  pressing.press(GREEN + 6 * MINUTE, 'penaltyWithdrawn.1', { penalty })
  expect(due(pressing, 10, 'protestEnds')).toBeUndefined()
})
