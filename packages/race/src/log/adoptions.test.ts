import { expect, test } from 'vitest'
import { inForce } from '../fold/in-force.ts'
import { DEVICES } from '../testing/ids.ts'
import { GREEN, Pressing } from '../testing/pressing.ts'
import { adopt, MINUTE, plan, policy, regulations, smallMeeting } from '../testing/small-meeting.ts'

const margin = (goMarginMs: number) => ({ ...plan, captain: { ...plan.captain, goMarginMs } })

test('L17: a change holds from when it says, a correction from the start', () => {
  const pressing = new Pressing()
  const document = 'plan'
  adopt(pressing, { document, content: margin(1_000), version: 1, at: GREEN })
  const appliesFrom = GREEN + 10 * MINUTE
  adopt(pressing, { document, content: margin(2_000), version: 2, at: GREEN + MINUTE, appliesFrom })
  const marginAt = (at: number) => inForce(pressing.state(), 'plan', at)?.captain.goMarginMs
  expect([GREEN, appliesFrom - 1, appliesFrom].map(marginAt)).toEqual([1_000, 1_000, 2_000])
  const at = GREEN + 20 * MINUTE
  adopt(pressing, { document, content: margin(3_000), version: 3, at, as: 'correction' })
  expect([GREEN, appliesFrom, at].map(marginAt)).toEqual([3_000, 3_000, 3_000])
})

test('L17: before its first version applies, that version is read', () => {
  const pressing = new Pressing()
  const later = { at: GREEN, appliesFrom: GREEN + MINUTE }
  adopt(pressing, { document: 'plan', content: margin(1_000), ...later })
  expect(inForce(pressing.state(), 'plan', GREEN)?.captain.goMarginMs).toBe(1_000)
  expect(inForce(pressing.state(), 'crew', GREEN)).toBeUndefined()
})

test('L17: rules adopted as a correction judge what happened before', () => {
  const pressing = smallMeeting({ rules: [policy('segment', 'holds')] })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  pressing.press(GREEN + MINUTE, 'trackCall.1', {})
  const content = regulations([policy('segment', 'runs')])
  const at = GREEN + 2 * MINUTE
  adopt(pressing, { document: 'rules', content, version: 2, at, as: 'correction' })
  expect(pressing.state().raceControl.interruptions[0]?.policy.segment).toBe('runs')
})

test('L18: versions adopted unaware of each other are listed, the later one holds', () => {
  const pressing = new Pressing()
  const first = adopt(pressing, { document: 'plan', content: margin(1_000), version: 4 })
  const second = adopt(pressing, {
    ...{ document: 'plan', content: margin(2_000), version: 4, at: GREEN, sha: 'b' },
    device: DEVICES.otherWall,
  })
  const state = pressing.state()
  expect(inForce(state, 'plan', GREEN)?.captain.goMarginMs).toBe(2_000)
  expect(state.problems).toEqual([
    {
      kind: 'adoptionClash',
      entries: [first, second],
      sentence: 'Two versions of the plan were adopted unaware of each other. The later one holds.',
    },
  ])
})

test('L18: adopting the same content again is no clash', () => {
  const pressing = new Pressing()
  adopt(pressing, { document: 'plan', content: plan, version: 4 })
  adopt(pressing, { document: 'plan', content: plan, version: 4, at: GREEN })
  expect(pressing.state().problems).toEqual([])
})
