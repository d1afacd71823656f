import { RULE_KINDS, type Regulations } from '@pitlamp/race'
import { describe, expect, it } from 'vitest'
import { PlanningModel } from '../../planning/planning-model.svelte.ts'
import { PaperLog } from '../fixture/paper-log.ts'
import { PaperMeeting } from '../fixture/paper-meeting.svelte.ts'
import { RulesModel } from './rules-model.svelte.ts'

/** Nothing was adopted, so that it stands as a meeting begins: two rules of stops, one segment. */
function fresh() {
  const meeting = new PaperMeeting(new PaperLog(), 0)
  const planning = new PlanningModel(() => meeting)
  return { planning, model: new RulesModel(planning) }
}

describe('the rules', () => {
  it('stand in groups, those with none left out', () => {
    const { model } = fresh()
    expect(model.groups.map(({ title }) => title)).toEqual(['Stops'])
    model.add('drivingTime')
    // In the order of a rule book, not of writing.
    expect(model.groups.map(({ title }) => title)).toEqual(['Driving', 'Stops'])
  })

  it('that are left out are named, unless nothing could be checked about them', () => {
    const { model } = fresh()
    expect(model.leftOut).toContain('Driving time')
    expect(model.leftOut).not.toContain('Mandatory stops')
    expect(model.leftOut).not.toContain('Points')
    model.add('drivingTime')
    expect(model.leftOut).not.toContain('Driving time')
  })

  it('that are written down only are named with the reason', () => {
    const { model } = fresh()
    expect(model.notChecked).toEqual([])
    model.add('points')
    expect(model.notChecked).toEqual([{ called: 'Points', why: 'Results are race control’s.' }])
  })

  it('of every kind are either checked or written down', () => {
    const { model } = fresh()
    const left = model.leftOut.length
    for (const { kind } of RULE_KINDS) model.add(kind)
    expect(model.leftOut).toEqual([])
    // The two that stood there are both checked.
    expect(model.notChecked.length + left + 2).toBe(RULE_KINDS.length)
  })
})

it('offers the categories of crew and rules, each once', () => {
  const { planning, model } = fresh()
  const person = { id: '018f3a50-6a00-7000-8000-00000000a001', name: 'Solveig', duties: [] }
  planning.crew.content.people.push({ ...person, categories: ['junior', 'captain'] })
  model.add('mayNotDo')
  model.add('endDriver')
  expect(model.categories).toEqual(['junior', 'captain', 'novice'])
})

it('replaces nothing by a set while what stands cannot be saved', async () => {
  const { planning, model } = fresh()
  const before = JSON.stringify(planning.rules.content)
  const regulations: Regulations = {
    ...{ name: 'Another', timeZone: 'Europe/Rome' },
    ...{ programme: [], rules: [] },
  }
  await model.startFrom({ id: 'x', called: 'Another', source: 'common practice', regulations })
  expect(model.problem).toContain('nothing was replaced')
  expect(model.replaced).toBeUndefined()
  expect(JSON.stringify(planning.rules.content)).toBe(before)
})
