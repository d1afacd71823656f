import { expect, test } from 'vitest'
import type { Rule } from '../rules/index.ts'
import { PEOPLE } from '../testing/ids.ts'
import { GREEN, type Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, policy, regulations, smallMeeting } from '../testing/small-meeting.ts'
import { raceTimeline } from '../timeline/timeline.ts'
import { judge } from './judge.ts'

const stint = (atMostMs: number): Rule => ({
  ...{ id: 'stint', kind: 'continuousDriving' },
  value: { atMostMs },
})
const judged = (pressing: Pressing, minute: number) => {
  const [state, now] = [pressing.state(), GREEN + minute * MINUTE]
  return judge(state, raceTimeline(state, now), now)
    .filter(({ rule }) => rule === 'stint')
    .map(({ verdict, limit, value }) => [verdict, limit / MINUTE, value / MINUTE])
}
const running = (rules: readonly Rule[]) => {
  const pressing = smallMeeting({ rules })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  return pressing
}
const handOver = (pressing: Pressing, minute: number) =>
  pressing.press(GREEN + minute * MINUTE, 'handover.1', {
    moves: [{ person: PEOPLE.Okello, duty: 'controller' }],
  })

test('driving that was held under a track call counts for nobody', () => {
  const driven = (does: 'runs' | 'holds') => {
    const pressing = running([stint(8 * MINUTE), policy('driving', does)])
    pressing.press(GREEN + 2 * MINUTE, 'trackCall.1', {})
    pressing.press(GREEN + 5 * MINUTE, 'powerOn.1', {})
    return judged(pressing, 10)
  }
  // Ten minutes at the controller, three of them under the call.
  expect(driven('runs')).toEqual([['broken', 8, 10]])
  expect(driven('holds')).toEqual([['kept', 8, 7]])
})

test('a stint is judged by the rules that were in force as it was driven', () => {
  const pressing = running([stint(8 * MINUTE)])
  handOver(pressing, 10)
  const content = regulations([stint(5 * MINUTE)])
  adopt(pressing, { document: 'rules', content, version: 2, at: GREEN + 11 * MINUTE })
  // Solveig drove 10 of 8 allowed then; Okello 6 by minute 16, of 5 allowed since.
  expect(judged(pressing, 16)).toEqual([
    ['broken', 8, 10],
    ['broken', 5, 6],
  ])
})

test('a correction of the rules holds from the start', () => {
  const pressing = running([stint(8 * MINUTE)])
  const [content, at] = [regulations([stint(12 * MINUTE)]), GREEN + 11 * MINUTE]
  adopt(pressing, { document: 'rules', content, version: 2, at, appliesFrom: 0, as: 'correction' })
  expect(judged(pressing, 11)).toEqual([['kept', 12, 11]])
})

test('nothing is judged before rules are adopted', () => {
  const pressing = smallMeeting()
  const state = { ...pressing.state(), documents: { ...pressing.state().documents, rules: [] } }
  expect(judge(state, raceTimeline(state, GREEN), GREEN)).toEqual([])
})
