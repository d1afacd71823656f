import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import type { Plan } from '../documents/plan.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { MINUTE, plan, smallMeeting, span } from '../testing/small-meeting.ts'
import { stayOut } from './stay-out.ts'

const { Solveig, Okello, Imre, Tamsin } = PEOPLE
const NOW = GREEN + 8 * MINUTE

function running(rules: readonly Rule[] = [], withPlan: Plan = plan): Pressing {
  const pressing = smallMeeting({ rules, plan: withPlan })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

/** Together: at most fourteen minutes without a break. */
const fourteen: Rule = {
  id: 'most',
  kind: 'continuousDriving',
  value: { atMostMs: 840_000 },
  clause: '§ 7',
}

test('five more are allowed where the rules allow them, ten are not, and the clause is named', () => {
  // Ten by the plan and at most fourteen: four more, so that five is one too many.
  const asked = stayOut(running([{ ...fourteen, value: { atMostMs: 900_000 } }]).state(), NOW)
  expect(asked).toMatchObject({
    person: Solveig,
    body: { segment: 'one', boundaryMs: 600_000 },
    ...{ endsMs: 600_000, endsAt: GREEN + 10 * MINUTE, allowedMs: 5 * MINUTE },
    stoppedBy: [{ rule: 'most', clause: '§ 7', value: 960_000 }],
  })
  expect(asked?.choices.map(({ byMs, movesMs, allowed }) => [byMs, movesMs, allowed])).toEqual([
    [300_000, 300_000, true],
    [600_000, 600_000, false],
  ])
  expect(asked?.choices[1]?.breaks).toMatchObject([{ clause: '§ 7', people: [Solveig] }])
})

test('how long is found by the minute', () => {
  const asked = stayOut(running([fourteen]).state(), NOW)
  expect(asked?.allowedMs).toBe(4 * MINUTE)
  expect(asked?.choices[0]).toMatchObject({ allowed: false, breaks: [{ value: 900_000 }] })
})

test('beyond five minutes it goes on by the minute', () => {
  // Ten by the plan and at most seventeen.
  const seventeen: Rule = { ...fourteen, value: { atMostMs: 1_020_000 } }
  expect(stayOut(running([seventeen]).state(), NOW)).toMatchObject({
    ...{ allowedMs: 7 * MINUTE, stoppedBy: [{ value: 1_080_000 }] },
  })
})

test('what is broken already forbids nothing', () => {
  const nine: Rule = { ...fourteen, value: { atMostMs: 540_000 } }
  const asked = stayOut(running([nine]).state(), NOW)
  expect(asked?.choices.map(({ allowed }) => allowed)).toEqual([true, true])
  // Up to the end of the stint that follows.
  expect(asked).toMatchObject({ allowedMs: 10 * MINUTE, stoppedBy: [] })
})

test('the breach named is the one that staying out makes, not that of the same driver later', () => {
  // Solveig 4, Okello 8, Solveig 8, at most 7: both later stints are broken as it is.
  const edges = [0, 4, 12, 20]
  const spans = [Solveig, Okello, Solveig].map((person, turn) => {
    const [fromMs, toMs] = [(edges[turn] ?? 0) * MINUTE, (edges[turn + 1] ?? 0) * MINUTE]
    return span(`t${turn + 1}`, person, { duty: 'controller', fromMs, toMs })
  })
  const seven: Rule = { ...fourteen, value: { atMostMs: 7 * MINUTE } }
  const asked = stayOut(running([seven], { ...plan, spans }).state(), GREEN + 2 * MINUTE)
  // 4 + 3 is 7, and a minute more is 8.
  expect(asked).toMatchObject({ allowedMs: 3 * MINUTE, stoppedBy: [{ value: 8 * MINUTE }] })
  expect(asked?.stoppedBy[0]?.spans).toContain('t1')
  expect(asked?.choices[0]).toMatchObject({ allowed: false, breaks: [{ value: 9 * MINUTE }] })
})

test('whom it moves, by how much', () => {
  const [five, ten] = stayOut(running().state(), NOW)?.choices ?? []
  const by = (minutes: number) => ({ byMs: minutes * MINUTE })
  expect(five?.moves).toEqual([
    { span: 's1', person: Solveig, duty: 'controller', what: 'ends', ...by(5) },
    { span: 's2', person: Okello, duty: 'controller', what: 'begins', ...by(5) },
    { span: 'm1', person: Imre, duty: 'post', post: '4', what: 'ends', ...by(5) },
    { span: 'm2', person: Tamsin, duty: 'post', post: '4', what: 'begins', ...by(5) },
    { span: 'w1', person: Tamsin, duty: 'wall', what: 'ends', ...by(5) },
    { span: 'w2', person: Imre, duty: 'wall', what: 'begins', ...by(5) },
  ])
  expect(ten?.moves.filter(({ what }) => what === 'dropped').map((one) => one.span)).toEqual([
    's2',
    'm2',
    'w2',
  ])
})

test('a second time goes on from the first, and names the place in the adopted plan', () => {
  const pressing = running()
  const body = { segment: 'one', boundaryMs: 600_000, byMs: 300_000 }
  pressing.press(NOW, 'stayOut.1', body)
  const asked = stayOut(pressing.state(), NOW)
  expect(asked).toMatchObject({ body: { boundaryMs: 600_000 }, endsMs: 900_000 })
  // Five are left of Okello’s stint.
  expect(asked?.choices.map(({ movesMs }) => movesMs)).toEqual([300_000, 300_000])
})

test('a handover moved onto the next one goes on as that one', () => {
  const thirds = [0, 1, 2].map((third) => {
    const at = {
      duty: 'controller',
      fromMs: third * 300_000,
      toMs: third * 300_000 + 300_000,
    } as const
    return span(`t${third}`, [Solveig, Okello, Imre][third] ?? '', at)
  })
  const pressing = running([], { ...plan, spans: thirds })
  const body = { segment: 'one', boundaryMs: 300_000, byMs: 300_000 }
  pressing.press(GREEN + 4 * MINUTE, 'stayOut.1', body)
  const asked = stayOut(pressing.state(), NOW)
  expect(asked).toMatchObject({ person: Solveig, body: { boundaryMs: 600_000 }, endsMs: 600_000 })
})

test('nobody is asked where no handover is ahead', () => {
  const pressing = running()
  expect(stayOut(smallMeeting().state(), GREEN - MINUTE)).toBeUndefined()
  pressing.press(GREEN + 10 * MINUTE, 'handover.1', {
    moves: [{ person: Okello, duty: 'controller' }],
  })
  expect(stayOut(pressing.state(), GREEN + 11 * MINUTE)).toBeUndefined()
})
