import { MINUTE_MS, row, type StartingPoint } from './starting-point.ts'

export const twoTracks: StartingPoint = {
  id: 'two-tracks-24-hours',
  called: 'Twenty-four hours on two tracks (Il Cavallino, Sanremo)',
  source:
    'Il Cavallino Sanremo, 24 h rules, year not stated: tuttoslot.it/cavallinosanremo/pres24gioco.htm',
  regulations: {
    name: 'Twenty-four hours on two tracks',
    timeZone: 'Europe/Rome',
    programme: /* @__PURE__ */ row({
      ...{ count: 24, lengthMs: 55 * MINUTE_MS, lane: 'notDrawnYet' },
      ...{ between: 'laneChange', betweenMs: 5 * MINUTE_MS },
    }),
    rules: [
      { id: 'tracks', kind: 'tracks', value: { tracks: 2, lanes: 6 } },
      { id: 'lanes', kind: 'laneOrder', value: { moves: 'oddUpEvenDown' } },
      {
        id: 'lane-change',
        kind: 'laneChange',
        value: { lengthMs: 5 * MINUTE_MS, earliestMs: 3 * MINUTE_MS },
      },
      { id: 'drivers', kind: 'numberOfDrivers', value: { atLeast: 4, atMost: 6 } },
      {
        id: 'driving-time',
        kind: 'drivingTime',
        value: { atLeastMs: 'notKnownYet', atMostMs: 'notKnownYet' },
        words: 'Limits of driving time go by the size of the team.',
      },
      {
        id: 'change',
        kind: 'driverChange',
        value: { where: 'stoppedInPitLane', order: 'notKnownYet' },
      },
      {
        id: 'rostrum',
        kind: 'penalty',
        value: {
          for: 'Somebody else than the driver on the rostrum',
          ...{ is: 'laps', amount: 10, per: 'occurrence', scope: 'race' },
        },
      },
    ],
  },
}
