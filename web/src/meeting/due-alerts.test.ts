import { emptyState, type Obligation, type State } from '@pitlamp/race'
import { describe, expect, it } from 'vitest'
import { newAlerts, stillShown, weightiestFirst, type Due, type Moment } from './due-alerts.ts'

const SOLVEIG = '018f3a50-6a00-7000-8000-00000000a001'
const IMRE = '018f3a50-6a00-7000-8000-00000000a002'
const DUE_AT = 10_000_000

const stint: Obligation = {
  id: 'stint:1',
  kind: 'stintEnd',
  dueAt: DUE_AT,
  held: false,
  concerns: [SOLVEIG],
  label: 'Solveig’s stint ends',
}
const relief: Obligation = {
  ...stint,
  id: 'relief:1',
  kind: 'relief',
  label: 'Relief',
  concerns: [IMRE],
}

const moment = (now: number, more: Partial<Moment> = {}): Moment => ({
  state: emptyState,
  now,
  rate: 1,
  person: undefined,
  obligations: [stint],
  ...more,
})
const nobodyHeard = { hearing: 'all', checkedTo: DUE_AT - 130_000, heard: () => false } as const
const ids = (alerts: readonly Due[]) => alerts.map(({ id }) => id)

const call = (at: number, answered = false): State => ({
  ...emptyState,
  people: {
    ...emptyState.people,
    calls: [
      {
        entry: 'c1',
        at,
        by: 'wall',
        body: { person: SOLVEIG, words: 'Come in this lap' },
        ...(answered ? { answer: { entry: 'c2', at: at + 1, answer: 'heard' } } : {}),
      },
    ],
  },
})

describe('new alerts', () => {
  it('come once each threshold passes, and are sounded in time', () => {
    // Two minutes before, looked at a second later.
    const [alert] = newAlerts(moment(DUE_AT - 119_000), nobodyHeard)
    expect(alert).toMatchObject({ thresholdMs: 120_000, sounded: true, label: stint.label })
  })

  it('are shown but not sounded when more than thirty seconds late', () => {
    const late = { ...nobodyHeard, checkedTo: undefined }
    expect(newAlerts(moment(DUE_AT - 89_000), late)).toMatchObject([{ sounded: false }])
    expect(newAlerts(moment(DUE_AT - 91_000), late)).toMatchObject([{ sounded: true }])
  })

  it('say only the last of several thresholds that passed at once', () => {
    const asleep = { ...nobodyHeard, checkedTo: DUE_AT - 700_000 }
    expect(newAlerts(moment(DUE_AT + 1_000), asleep)).toMatchObject([{ thresholdMs: 0 }])
  })

  it('never repeat what was heard on this device', () => {
    const heard = (id: string) => id === 'stint:1@120000'
    expect(newAlerts(moment(DUE_AT - 119_000), { ...nobodyHeard, heard })).toEqual([])
  })

  it('reach a phone only where they concern its holder', () => {
    const at = (person: string) => moment(DUE_AT - 119_000, { person })
    const own = { ...nobodyHeard, hearing: 'own' } as const
    expect(newAlerts(at(SOLVEIG), own)).toHaveLength(1)
    expect(newAlerts(at(IMRE), own)).toEqual([])
  })

  it('reach a marshal only for the relief', () => {
    const obligations = [{ ...stint, concerns: [IMRE] }, relief]
    const at = moment(DUE_AT - 119_000, { person: IMRE, obligations })
    expect(ids(newAlerts(at, { ...nobodyHeard, hearing: 'relief' }))).toEqual(['relief:1@120000'])
  })

  it('count lateness in real time where the meeting runs faster', () => {
    // At ten times the rate 200 s of the meeting are 20 s in the hall.
    const at = moment(DUE_AT + 200_000, { rate: 10 })
    expect(newAlerts(at, { ...nobodyHeard, checkedTo: DUE_AT - 1 })).toMatchObject([
      { sounded: true },
    ])
  })

  it('bring a call to whom it is for, whatever screen they look at', () => {
    const state = call(500_000)
    const none = { hearing: 'none', checkedTo: undefined, heard: () => false } as const
    const at = (person: string) => moment(505_000, { state, person, obligations: [] })
    expect(ids(newAlerts(at(SOLVEIG), none))).toEqual(['call:c1'])
    expect(newAlerts(at(IMRE), none)).toEqual([])
  })

  it('sound a call anew each time it is repeated, every twenty seconds', () => {
    const none = { hearing: 'none', checkedTo: undefined, heard: () => false } as const
    const after = (ms: number) => {
      const seen = { state: call(500_000), person: SOLVEIG, obligations: [] }
      return newAlerts(moment(500_000 + ms, seen), none).map(({ id, about, sounded }) => [
        ...[id, about, sounded],
      ])
    }
    expect(after(19_000)).toEqual([['call:c1', 'call:c1', true]])
    expect(after(45_000)).toEqual([['call:c1:2', 'call:c1', true]])
  })
})

describe('alerts on show', () => {
  const warning: Due = {
    id: 'stint:1@120000',
    kind: 'stintEnd',
    about: 'stint:1',
    label: stint.label,
    thresholdMs: 120_000,
    dueAt: DUE_AT,
    momentAt: DUE_AT - 120_000,
    concerns: [SOLVEIG],
    sounded: true,
  }
  const due: Due = { ...warning, id: 'stint:1@0', thresholdMs: 0, momentAt: DUE_AT }

  it('go by themselves after a while, unless they are due', () => {
    expect(stillShown([warning], moment(warning.momentAt + 19_000))).toEqual([warning])
    expect(stillShown([warning], moment(warning.momentAt + 21_000))).toEqual([])
    expect(stillShown([due], moment(DUE_AT + 300_000))).toEqual([due])
  })

  it('go when what they are about is done', () => {
    expect(stillShown([due], moment(DUE_AT + 1_000, { obligations: [] }))).toEqual([])
  })

  it('follow a due time that moves', () => {
    const obligations = [{ ...stint, dueAt: DUE_AT + 60_000 }]
    const [shown] = stillShown([warning], moment(warning.momentAt + 5_000, { obligations }))
    expect(shown?.dueAt).toBe(DUE_AT + 60_000)
  })

  it('make room for a newer one about the same', () => {
    expect(stillShown([warning, due], moment(DUE_AT))).toEqual([due])
  })

  it('keep a call until it is answered', () => {
    const alert: Due = {
      ...due,
      id: 'call:c1',
      about: 'call:c1',
      kind: 'call',
      thresholdMs: undefined,
    }
    const at = (state: State) => moment(900_000, { state, obligations: [] })
    expect(stillShown([alert], at(call(500_000)))).toEqual([alert])
    expect(stillShown([alert], at(call(500_000, true)))).toEqual([])
  })

  it('stand in the order in which they fall due, the weightier first', () => {
    const stop: Due = { ...due, id: 'stop', kind: 'stopWindowCloses' }
    const later: Due = { ...stop, id: 'later', dueAt: DUE_AT + 1 }
    expect(ids(weightiestFirst([later, due, stop]))).toEqual(['stop', 'stint:1@0', 'later'])
  })
})
