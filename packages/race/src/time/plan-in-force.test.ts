import { expect, test } from 'vitest'
import { nextDutyOf } from '../clocks/duties.ts'
import { nextHandover } from '../clocks/next-handover.ts'
import { stintClock } from '../clocks/stint-clock.ts'
import type { Plan } from '../documents/plan.ts'
import { obligations } from '../obligations/obligations.ts'
import { DEVICES, PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, plan, smallMeeting, span } from '../testing/small-meeting.ts'
import { planTimeline } from '../timeline/timeline.ts'
import { withDrafts } from '../timeline/with-drafts.ts'
import { planInForce } from './plan-in-force.ts'

const { Solveig, Okello, Tamsin, Imre } = PEOPLE
const NOW = GREEN + 9 * MINUTE

function running(withPlan: Plan = plan): Pressing {
  const pressing = smallMeeting({ plan: withPlan })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}

function stayOut(pressing: Pressing, minutes: number, boundary = 10): string {
  const body = { segment: 'one', boundaryMs: boundary * MINUTE, byMs: minutes * MINUTE }
  return pressing.press(GREEN + 8 * MINUTE, 'stayOut.1', body)
}

/** Lines with their minutes. */
function spans(pressing: Pressing, now = NOW) {
  const list = planInForce(pressing.state(), now)?.spans ?? []
  return list.map(({ id, fromMs, toMs }) => `${id} ${fromMs / MINUTE}–${toMs / MINUTE}`)
}

test('L35: everybody whose duty begins or ends there moves, and nobody else', () => {
  const other = {
    ...span('x', Solveig, { duty: 'bench', fromMs: 0, toMs: 600_000 }),
    segment: 'two',
  }
  const stops = [
    { id: 'p', segment: 'one', atMs: 600_000, mandatory: true },
    { id: 'q', segment: 'one', atMs: 660_000, mandatory: false },
  ]
  const pressing = running({ ...plan, spans: [...plan.spans, other], stops })
  stayOut(pressing, 5)
  const moved = ['s1 0–15', 's2 15–20', 'm1 0–15', 'm2 15–20', 'w1 0–15', 'w2 15–20']
  expect(spans(pressing)).toEqual([...moved, 'x 0–10'])
  const atMs = planInForce(pressing.state(), NOW)?.stops.map((stop) => stop.atMs / MINUTE)
  expect(atMs).toEqual([15, 11])
})

test('L35: several add up, at most to the end of the stint that follows, and one that is void is none', () => {
  const pressing = running()
  const first = stayOut(pressing, 5)
  stayOut(pressing, 3)
  expect(spans(pressing)[0]).toBe('s1 0–18')
  stayOut(pressing, 5)
  // 10 + 5 + 3 + 5 is 23: Okello’s stint would end at 20, and falls away with the others there.
  expect(spans(pressing)).toEqual(['s1 0–20', 'm1 0–20', 'w1 0–20'])
  const change = { what: 'void' } as const
  pressing.press(NOW, 'correction.1', { target: first, basedOn: first, change, reason: '' })
  expect(spans(pressing)[0]).toBe('s1 0–18')
})

test('L13: of two devices that say the same at once one is a witness', () => {
  const pressing = running()
  stayOut(pressing, 5)
  stayOut(pressing.by({ device: DEVICES.otherWall }), 5)
  expect(spans(pressing)[0]).toBe('s1 0–15')
})

test('L35: the segment’s end is as far as it goes where nobody follows', () => {
  const alone = [span('s1', Solveig, { duty: 'controller', fromMs: 0, toMs: 1_080_000 })]
  const pressing = running({ ...plan, spans: alone })
  stayOut(pressing, 5, 18)
  expect(spans(pressing)).toEqual(['s1 0–20'])
})

test('what somebody would have done between the two falls away, or begins later', () => {
  const later = [
    span('a', Imre, { duty: 'bench', fromMs: 600_000, toMs: 720_000 }),
    span('b', Imre, { duty: 'post', fromMs: 720_000, toMs: 1_200_000 }),
    span('c', Solveig, { duty: 'wall', fromMs: 780_000, toMs: 1_200_000 }),
    span('d', Tamsin, { duty: 'wall', fromMs: 780_000, toMs: 1_200_000 }),
  ]
  const drivers = plan.spans.filter((one) => one.duty === 'controller')
  const pressing = running({ ...plan, spans: [...drivers, ...later] })
  stayOut(pressing, 5)
  // Tamsin has nothing to do with that handover.
  expect(spans(pressing)).toEqual(['s1 0–15', 's2 15–20', 'b 15–20', 'c 15–20', 'd 13–20'])
})

test('a place without the end of a stint moves nothing', () => {
  const pressing = running()
  stayOut(pressing, 5, 9)
  expect(planInForce(pressing.state(), NOW)).toEqual(plan)
})

test('L35: a version adopted later stands as it is, and so does a draft', () => {
  const pressing = running()
  stayOut(pressing, 5)
  const drafted = withDrafts(pressing.state(), { plan })
  expect(planInForce(drafted, NOW)).toEqual(plan)
  adopt(pressing, { document: 'plan', content: plan, version: 2, at: GREEN + 8.5 * MINUTE })
  expect(spans(pressing)[0]).toBe('s1 0–10')
  expect(spans(pressing, GREEN + 8.2 * MINUTE)[0]).toBe('s1 0–15')
})

test('L35: a segment that is run again is as it was planned', () => {
  const pressing = running()
  stayOut(pressing, 5)
  pressing.press(GREEN + 9 * MINUTE, 'segmentEnd.1', { segment: 'one' })
  expect(spans(pressing)[0]).toBe('s1 0–15')
  const change = { what: 'runAgain', lapsCount: false, drivingCounts: true } as const
  pressing.press(GREEN + 10 * MINUTE, 'segmentChanged.1', { segment: 'one', change })
  expect(spans(pressing, GREEN + 11 * MINUTE)[0]).toBe('s1 0–10')
  const again = GREEN + 20 * MINUTE
  pressing.press(again, 'green.1', { segment: 'one' })
  expect(spans(pressing, again)[0]).toBe('s1 0–10')
  const body = { segment: 'one', boundaryMs: 10 * MINUTE, byMs: 3 * MINUTE }
  pressing.press(again + 8 * MINUTE, 'stayOut.1', body)
  expect(spans(pressing, again + 9 * MINUTE)[0]).toBe('s1 0–13')
})

test('L35: whatever reads the plan sees it', () => {
  const stops = [{ id: 'p', segment: 'one', atMs: 600_000, mandatory: true }]
  const pressing = running({ ...plan, stops })
  stayOut(pressing, 5)
  const state = pressing.state()
  const at = GREEN + 15 * MINUTE
  expect(stintClock(state, NOW)?.plannedEndAt).toBe(at)
  expect(nextHandover(state, NOW)?.at).toBe(at)
  expect(nextDutyOf(state, Okello, NOW)?.startsAt).toBe(at)
  const timeline = planTimeline(state, NOW)
  expect(timeline.spans.find(({ id }) => id === 's2')?.fromAt).toBe(at)
  expect(timeline.stops[0]?.at).toBe(at)
  const due = obligations(state, NOW).filter(({ kind }) => kind !== 'segmentEnd')
  expect(new Set(due.map(({ dueAt }) => dueAt))).toEqual(new Set([at]))
})
