import type { Worked } from '@pitlamp/contract'
import { inForce, type Plan } from '@pitlamp/race'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { ADA, BEN, id, running } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { RotationModel } from './rotation-model.svelte.ts'
import { WorkModel } from './work-model.svelte.ts'

const DEA = id(14)

// There is no server on paper: drafts stay on the page, and nobody waits to save them again.
beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

/** Twenty minutes into the race. */
async function working() {
  const meeting = new PaperMeeting(running(), 20)
  meeting.role = 'captain'
  const rotation = new RotationModel(() => meeting)
  await rotation.planning.load()
  const work = new WorkModel(rotation, () => meeting)
  const people = () => inForce(meeting.state, 'crew', meeting.now)?.people ?? []
  const drivers = () => driversOf(inForce(meeting.state, 'plan', meeting.now))
  return { meeting, planning: rotation.planning, work, people, drivers }
}

function driversOf(plan: Plan | undefined) {
  return plan?.spans
    .filter(({ segment, duty }) => segment === 's2' && duty === 'controller')
    .map(({ person }) => person)
}

/** The plan as it is drawn, with somebody else driving first in the second segment. */
function answer(plan: Plan, person: string): Worked {
  const spans = plan.spans.map((span) => (span.id === 's2d0' ? { ...span, person } : span))
  return {
    ...{ kind: 'worked', as: 'fewestChanges', proof: 'best', changed: 1, notes: [] },
    plan: { ...plan, spans },
  }
}

it('adopts the plan alone where the crew has all who are in it', async () => {
  const { planning, work, people, drivers } = await working()
  planning.crew.content.people.forEach((one) => (one.paceMs = 9_000))
  await work.adopt(answer(planning.plan.content, BEN))
  expect(drivers()?.[0]).toBe(BEN)
  expect(people().map(({ paceMs }) => paceMs)).toEqual([undefined, undefined, undefined])
})

it('adopts the crew before a plan that names somebody it lacks', async () => {
  const { planning, work, people, drivers } = await working()
  planning.crew.content.people.push({ id: DEA, name: 'Dea', duties: [] })
  await work.adopt(answer(planning.plan.content, DEA))
  expect(drivers()?.[0]).toBe(DEA)
  expect(people().map(({ name }) => name)).toEqual(['Ada', 'Ben', 'Cho', 'Dea'])
  // Both can be seen to be saved.
  expect(planning.adopted).toHaveLength(2)
})

it('adopts no plan whose new people somebody else’s crew may lack', async () => {
  const { planning, work, people, drivers } = await working()
  planning.crew.content.people.push({ id: DEA, name: 'Dea', duties: [] })
  planning.crew.theirs = { version: 2, content: { people: [] } }
  await work.adopt(answer(planning.plan.content, DEA))
  expect(drivers()?.[0]).toBe(ADA)
  expect(people()).toHaveLength(3)
  expect(planning.plan.content.spans.find((span) => span.id === 's2d0')?.person).toBe(DEA)
})

it('says where the rules it was worked out by are a draft', async () => {
  const { planning, work } = await working()
  expect(work.isByDraftRules).toBe(false)
  planning.rules.content.rules.pop()
  expect(work.isByDraftRules).toBe(true)
  await planning.adopt('change')
  expect(work.isByDraftRules).toBe(false)
})
