import type { Plan, PlanSpan, Regulations, Rule } from '@pitlamp/race'
import { describe, expect, it } from 'vitest'
import { contradictions } from './contradictions.ts'
import { FIRST_PLAN } from './defaults.ts'
import { briefingQuestions, undriven } from './questions.ts'

const MINUTE_MS = 60_000
const SOLVEIG = '018f3a50-6a00-7000-8000-00000000a001'
const IMRE = '018f3a50-6a00-7000-8000-00000000a002'

const known: readonly Rule[] = [
  { id: 'a', kind: 'mandatoryStops', value: { count: 1, per: 'segment' } },
  { id: 'b', kind: 'stopMinimum', value: { minimumMs: 45_000, from: 'stopped', to: 'leaving' } },
]
const rules = (more: Partial<Regulations> = {}): Regulations => ({
  name: 'Two forties',
  timeZone: 'Europe/Dublin',
  programme: [
    { id: 's1', kind: 'segment', length: { by: 'time', lengthMs: 40 * MINUTE_MS } },
    {
      id: 's2',
      kind: 'segment',
      name: 'Dark forty',
      length: { by: 'time', lengthMs: 40 * MINUTE_MS },
    },
  ],
  rules: [...known],
  ...more,
})
const crew = {
  people: [
    { id: SOLVEIG, name: 'Solveig', duties: [] },
    { id: IMRE, name: 'Imre', duties: [] },
  ],
}
const span = (more: Partial<PlanSpan>): PlanSpan => ({
  id: 'p1',
  person: SOLVEIG,
  duty: 'controller',
  segment: 's1',
  fromMs: 0,
  toMs: 20 * MINUTE_MS,
  ...more,
})
const plan = (more: Partial<Plan>): Plan => ({ ...FIRST_PLAN, ...more })
const said = (written: { rules?: Regulations; plan?: Plan }) =>
  contradictions({ rules: rules(), plan: FIRST_PLAN, crew, ...written }).map(
    ({ what, why }) => `${what} ${why}`,
  )
const window = (segment: string, from: number, to: number): Rule => ({
  id: 'w',
  kind: 'stopWindows',
  value: {
    windows: [{ id: 'w1', segment, fromMs: from * MINUTE_MS, toMs: to * MINUTE_MS }],
  },
})

describe('contradictions', () => {
  it('are none in what holds together', () => {
    const spans = [
      span({}),
      span({ id: 'p2', person: IMRE, fromMs: 20 * MINUTE_MS, toMs: 40 * MINUTE_MS }),
    ]
    const stops = [{ id: 't1', segment: 's1', atMs: 20 * MINUTE_MS, mandatory: true }]
    expect(
      said({
        rules: rules({ rules: [...known, window('s1', 15, 25)] }),
        plan: plan({ spans, stops }),
      }),
    ).toEqual([])
  })

  it('name a minimum of nothing', () => {
    const nothing: Rule = {
      id: 'b',
      kind: 'stopMinimum',
      value: { minimumMs: 0, from: 'stopped', to: 'leaving' },
    }
    expect(said({ rules: rules({ rules: [nothing] }) })[0]).toMatch(
      /^The minimum stop is nothing\./,
    )
  })

  it('name a window outside its segment, and one that ends before it begins', () => {
    expect(said({ rules: rules({ rules: [...known, window('s2', 30, 50)] }) })).toEqual([
      'The window in Dark forty from 0:30 to 0:50 cannot be used. Dark forty is over at 0:40.',
    ])
    expect(said({ rules: rules({ rules: [...known, window('s1', 20, 10)] }) })).toEqual([
      'The window in Segment 1 from 0:20 to 0:10 cannot be used. It ends before it begins.',
    ])
  })

  it('name a plan beyond the end of its segment, or in one that is gone', () => {
    expect(said({ plan: plan({ spans: [span({ toMs: 45 * MINUTE_MS })] }) })).toEqual([
      'Solveig in Segment 1 from 0:00 cannot be. Segment 1 is over at 0:40.',
    ])
    expect(said({ plan: plan({ spans: [span({ segment: 's9' })] }) })).toEqual([
      'Solveig in A segment that is gone from 0:00 cannot be. Its segment is gone from the programme.',
    ])
  })

  it('name two drivers at once, and one person in two places', () => {
    const other = span({ id: 'p2', person: IMRE, fromMs: 15 * MINUTE_MS, toMs: 30 * MINUTE_MS })
    expect(said({ plan: plan({ spans: [span({}), other] }) })).toEqual([
      'Solveig and Imre both drive. In Segment 1 from 0:15 to 0:20.',
    ])
    const post = span({ id: 'p2', duty: 'post', fromMs: 10 * MINUTE_MS })
    expect(said({ plan: plan({ spans: [span({}), post] }) })).toEqual([
      'Solveig is in two places. In Segment 1 from 0:10 to 0:20.',
    ])
  })

  it('name a mandatory stop that is in no window', () => {
    const stops = [{ id: 't1', segment: 's1', atMs: 30 * MINUTE_MS, mandatory: true }]
    const written = {
      rules: rules({ rules: [...known, window('s1', 15, 25)] }),
      plan: plan({ stops }),
    }
    expect(said(written)).toEqual([
      'The stop in Segment 1 at 0:30 does not fit. A mandatory stop is taken inside a window, and this is in none.',
    ])
  })

  it('name a time zone that is none', () => {
    expect(said({ rules: rules({ timeZone: 'Dublin time' }) })[0]).toMatch(
      /^“Dublin time” is no time zone\./,
    )
  })
})

it('asks at the briefing what the organiser has not said, and nothing about stops where there are none', () => {
  const none: Rule = { id: 'a', kind: 'mandatoryStops', value: { count: 0, per: 'race' } }
  expect(briefingQuestions({ rules: rules({ rules: [none] }) })).toEqual([
    'Does a track call stop the segment’s clock?',
    'Does a track call count as driving time?',
    'May hands touch the car while power is off?',
  ])
})

it('lists the stretches of a segment in which nobody drives, once anybody does', () => {
  const spans = [span({ fromMs: 5 * MINUTE_MS, toMs: 20 * MINUTE_MS })]
  expect(undriven({ rules: rules(), crew, plan: plan({ spans }) })).toEqual([
    'Nobody drives in Segment 1 from 0:00 to 0:05.',
    'Nobody drives in Segment 1 from 0:20 to 0:40.',
  ])
})
