import { MINUTE_MS, row, type StartingPoint } from './starting-point.ts'

export const pairsSeries: StartingPoint = {
  id: 'pairs-series-2016',
  called: 'Two hours in pairs (Tarragona 2016)',
  source: 'Resistencia Tarragona, pairs series, 2016: rallyslotclubtarragona.blogspot.com',
  regulations: {
    name: 'Pairs series, two hours',
    timeZone: 'Europe/Madrid',
    programme: /* @__PURE__ */ row({
      ...{ count: 6, lengthMs: 20 * MINUTE_MS },
      ...{ between: 'laneChange', lane: 'notDrawnYet' },
    }),
    rules: [
      { id: 'tracks', kind: 'tracks', value: { tracks: 'notKnownYet', lanes: 6 } },
      { id: 'lane-change', kind: 'laneChange', value: { lengthMs: 'notKnownYet' } },
      { id: 'drivers', kind: 'numberOfDrivers', value: { atLeast: 2, atMost: 2 } },
      { id: 'equal', kind: 'equalShare', value: { of: 'segments' } },
    ],
    note: 'On four lanes: four segments of 30 minutes.',
  },
}
