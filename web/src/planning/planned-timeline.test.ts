import { inForce } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { onLanes } from '../screens/fixture/lanes-on-paper.ts'
import { MINUTE, START } from '../screens/fixture/paper-log.ts'
import { PaperMeeting } from '../screens/fixture/paper-meeting.svelte.ts'
import { plannedTimeline } from './planned-timeline.ts'

function drafted(log = onLanes()) {
  const { state, now } = new PaperMeeting(log, -30)
  const [rules, crew, plan] = [
    inForce(state, 'rules', now),
    inForce(state, 'crew', now),
    inForce(state, 'plan', now),
  ]
  if (!rules || !crew || !plan) throw new Error('All three are adopted on paper.')
  return { state, now, drafts: { rules, crew, plan } }
}

test('a plan whose programme names a time stands by the clock', () => {
  const { state, now, drafts } = drafted()
  const [first] = plannedTimeline(state, drafts, now)?.spans ?? []
  expect([first?.fromAt, first?.toAt]).toEqual([START, START + 20 * MINUTE])
})

test('without a time and before the first green there is none; once green there is', () => {
  const { state, now, drafts } = drafted()
  const programme = drafts.rules.programme.map(({ plannedAt: _, ...item }) => item)
  const timeless = { ...drafts, rules: { ...drafts.rules, programme } }
  expect(plannedTimeline(state, timeless, now)).toBeUndefined()
  const log = onLanes()
  log.add(-40, 'green.1', { segment: 's1' })
  const green = drafted(log)
  const last = plannedTimeline(green.state, timeless, green.now)?.spans.at(-1)
  // Green at 10:20; the fourth segment ends 4 × 20 min and 3 × 5 min of lane changes later, at the earliest.
  expect(last?.toAt).toBeGreaterThanOrEqual(START + (-40 + 80) * MINUTE)
})
