/** Answers → plan documents, before and in a race. */
import { withDrafts, type Plan } from '@pitlamp/race'
import { expect, test } from 'vitest'
import { GREEN, type Pressing } from '../../packages/race/src/testing/pressing.ts'
import { PEOPLE } from '../../packages/race/src/testing/ids.ts'
import {
  MINUTE,
  plan as smallPlan,
  smallMeeting,
} from '../../packages/race/src/testing/small-meeting.ts'
import { groundOf, type Ground } from '../../server/src/work/mapping/ground.ts'
import { planFrom } from '../../server/src/work/mapping/plan-from.ts'
import { problemOf } from '../../server/src/work/mapping/problem-of.ts'
import { PLAIN, saidOf } from '../../server/src/work/testing/meant.ts'
import { brokenBy } from '../../server/src/work/mapping/verdict.ts'

const SETTINGS = { ...PLAIN, changeEveryMs: 10 * MINUTE, duties: ['post' as const] }

/** Green was given, and twelve minutes are driven as planned. */
function racing(): Pressing {
  const pressing = smallMeeting({ paceMs: 9_000 })
  const moves = [
    { person: PEOPLE.Solveig, duty: 'controller' as const },
    { person: PEOPLE.Imre, duty: 'post' as const, post: '4' },
  ]
  pressing.press(GREEN - 1_000, 'handover.1', { moves })
  pressing.press(GREEN, 'green.1', { segment: 'one' })
  const next = [{ person: PEOPLE.Okello, duty: 'controller' as const }]
  pressing.press(GREEN + 10 * MINUTE, 'handover.1', { moves: next })
  return pressing
}

function ground(pressing: Pressing, minutes: number): Ground {
  const now = GREEN + minutes * MINUTE
  const found = groundOf({ recorded: pressing.state(), now, drafts: {} })
  if (!found) throw new Error('There is no ground.')
  return found
}

test('what was driven is past, and what is still to come lies where it will', () => {
  const { segments } = problemOf(ground(racing(), 12), SETTINGS)
  expect(segments[0]).toMatchObject({ id: 'one', startsAt: GREEN, past: { untilMs: 12 * MINUTE } })
  expect(segments[0]?.past?.spans.filter(({ duty }) => duty === 'controller')).toEqual([
    {
      ...{ person: PEOPLE.Solveig, duty: 'controller', segment: 'one' },
      ...{ fromMs: 0, toMs: 10 * MINUTE },
    },
    {
      ...{ person: PEOPLE.Okello, duty: 'controller', segment: 'one' },
      ...{ fromMs: 10 * MINUTE, toMs: 12 * MINUTE },
    },
  ])
  expect(segments[1]?.past).toBeUndefined()
})

test('whoever goes on keeps the line, and a line that was driven stays as it was planned', () => {
  const now = 12 * MINUTE
  const drives = { person: PEOPLE.Okello, duty: 'controller' as const, segment: 'one' }
  const plan = planFrom(ground(racing(), 12), {
    spans: [{ ...drives, fromMs: now, toMs: 15 * MINUTE }],
    stops: [],
  })
  const line = (id: string) => plan.spans.find((one) => one.id === id)
  expect(line('s1')).toMatchObject({ fromMs: 0, toMs: 10 * MINUTE })
  expect(line('s2')).toMatchObject({
    person: PEOPLE.Okello,
    fromMs: 10 * MINUTE,
    toMs: 15 * MINUTE,
  })
})

test('a plan that breaks a rule is said to, what the race broke before is not', () => {
  const here = ground(racing(), 12)
  const nobody: Plan = {
    ...here.plan,
    spans: here.plan.spans.filter(({ duty }) => duty === 'post'),
  }
  expect(brokenBy(here, nobody).some(({ id }) => id === 'somebodyDrives:gap')).toBe(true)
  const state = withDrafts(here.state, { plan: here.plan })
  expect(state.documents.plan.length).toBe(1)
})

test('somebody is gone: both ways on leave them out and keep what was driven', async () => {
  const pressing = racing()
  pressing.press(GREEN + 11 * MINUTE, 'availability.1', { person: PEOPLE.Okello, state: 'unwell' })
  const meant = { recorded: pressing.state(), now: GREEN + 12 * MINUTE, drafts: {} }
  const lines = await saidOf(meant, { ...SETTINGS, want: 'again', from: 'inForce' })
  expect(lines.map((line) => (line.kind === 'worked' ? line.as : line))).toEqual([
    ...['fewestChanges', 'mostLaps'],
  ])
  for (const line of lines) {
    if (line.kind !== 'worked') continue
    const ahead = line.plan.spans.filter(
      ({ person, segment, toMs }) =>
        person === PEOPLE.Okello && (segment === 'two' || toMs > 12 * MINUTE),
    )
    expect(ahead).toEqual([])
  }
})

test('somebody who is kept stays off the rest of the race, however often it is worked out again', async () => {
  const recorded = racing().state()
  let plan: Plan = { ...smallPlan, keptPeople: [PEOPLE.Solveig] }
  for (const minute of [12, 14]) {
    const meant = { recorded, now: GREEN + minute * MINUTE, drafts: { plan } }
    const lines = await saidOf(meant, { ...SETTINGS, want: 'again', from: 'drafts' })
    expect(lines.map(({ kind }) => kind)).toEqual(['worked', 'worked'])
    for (const line of lines) {
      if (line.kind !== 'worked') continue
      const [hers, others] = [true, false].map((isHers) =>
        line.plan.spans.filter(({ person }) => (person === PEOPLE.Solveig) === isHers),
      )
      // She drove the first ten minutes of segment one.
      expect(hers).toMatchObject([{ id: 's1', fromMs: 0, toMs: 10 * MINUTE }])
      expect(others?.some(({ segment }) => segment === 'two')).toBe(true)
      expect(line.plan.keptPeople).toEqual([PEOPLE.Solveig])
      plan = line.plan
    }
  }
})
