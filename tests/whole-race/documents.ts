/** What the scripted meeting goes by: three segments of twenty minutes, parc fermé between, a stop of 60 s in each. */
import type { ClockPolicy, Crew, Plan, Regulations } from '@pitlamp/race'

export const RUNA = '018f3a50-6a00-7000-8000-00000000d001'
export const PELL = '018f3a50-6a00-7000-8000-00000000d002'
export const SORREL = '018f3a50-6a00-7000-8000-00000000d003'

const SECOND_MS = 1_000
const SEGMENT_MS = 1_200 * SECOND_MS
const HALF_MS = 600 * SECOND_MS
const CLOCKS = ['segment', 'stopMinimum', 'driving', 'repairLimit'] as const

export type Policies = Readonly<Record<(typeof CLOCKS)[number], ClockPolicy>>

const segment = (id: string) =>
  ({ id, kind: 'segment', length: { by: 'time', lengthMs: SEGMENT_MS } }) as const
const rest = (id: string) => ({ id, kind: 'break', lengthMs: 600 * SECOND_MS }) as const

export function rulesOf(policies: Policies): Regulations {
  return {
    name: 'Three twenties at the Bell Foundry',
    timeZone: 'Europe/Dublin',
    programme: [segment('s1'), rest('b1'), segment('s2'), rest('b2'), segment('s3')],
    rules: [
      { id: 'stops', kind: 'mandatoryStops', value: { count: 1, per: 'segment' } },
      {
        id: 'minimum',
        kind: 'stopMinimum',
        value: { minimumMs: 60 * SECOND_MS, from: 'stopped', to: 'leaving' },
      },
      ...CLOCKS.map((clock) => ({
        id: `call-${clock}`,
        kind: 'clockPolicy' as const,
        value: { clock, under: 'trackCall' as const, does: policies[clock] },
      })),
      { id: 'green', kind: 'workAllowed', value: { during: 'green', allowed: true } },
      { id: 'call', kind: 'workAllowed', value: { during: 'trackCall', allowed: false } },
      {
        id: 'ferme',
        kind: 'workAllowed',
        clause: '6.3',
        value: { during: 'parcFerme', allowed: false },
      },
      {
        id: 'wing',
        kind: 'compulsoryRepair',
        clause: '6.5',
        value: { what: 'Rear wing', withinMs: 300 * SECOND_MS, underGreen: true, costLaps: 1 },
      },
      {
        id: 'early',
        kind: 'penalty',
        clause: '7.1',
        value: {
          ...{ for: 'Stop left early', is: 'laps', amount: 1, per: 'secondShort', scope: 'race' },
        },
      },
      { id: 'driving', kind: 'drivingTime', value: { atMostMs: 1_250 * SECOND_MS } },
      { id: 'track', kind: 'tracks', value: { tracks: 1, lanes: 6, sections: 50 } },
    ],
  }
}

export const crew: Crew = {
  people: [
    { id: RUNA, name: 'Runa', duties: [] },
    { id: PELL, name: 'Pell', duties: [] },
    { id: SORREL, name: 'Sorrel', duties: [] },
  ],
}

export const car = { name: 'Wren Mark 4', faultTiles: ['Rear wing', 'Braid'] }

/** Each segment: who drives to half time, who from then on; the third marshals, and the other watches the wall. */
const TURNS = [
  ['s1', RUNA, PELL, SORREL],
  ['s2', PELL, SORREL, RUNA],
  ['s3', SORREL, RUNA, PELL],
] as const

export const plan: Plan = {
  spans: TURNS.flatMap(([id, first, second, marshal]) => [
    span(`${id}d1`, { person: first, duty: 'controller', segment: id, fromMs: 0, toMs: HALF_MS }),
    span(`${id}d2`, {
      ...{ person: second, duty: 'controller', segment: id, fromMs: HALF_MS, toMs: SEGMENT_MS },
    }),
    span(`${id}w1`, { person: second, duty: 'wall', segment: id, fromMs: 0, toMs: HALF_MS }),
    span(`${id}w2`, {
      person: first,
      duty: 'wall',
      segment: id,
      fromMs: HALF_MS,
      toMs: SEGMENT_MS,
    }),
    span(`${id}m`, {
      ...{ person: marshal, duty: 'post', post: '4', segment: id, fromMs: 0, toMs: SEGMENT_MS },
    }),
  ]),
  stops: TURNS.map(([id]) => ({ id: `${id}stop`, segment: id, atMs: HALF_MS, mandatory: true })),
  captain: {
    goMarginMs: 2 * SECOND_MS,
    askForClockAtMs: 5 * SECOND_MS,
    hotWorkInStops: false,
    protestMs: 600 * SECOND_MS,
  },
}

function span(id: string, rest: Omit<Plan['spans'][number], 'id'>): Plan['spans'][number] {
  return { id, ...rest }
}
