import { MINUTE_MS, NO_SOURCE, row, type StartingPoint } from './starting-point.ts'

export const analogueSitOuts: StartingPoint = {
  id: 'analogue-sit-outs',
  called: 'Analogue: eight segments on six lanes, two of them sat out',
  source: NO_SOURCE,
  regulations: {
    name: 'Analogue, six lanes with sit-outs',
    timeZone: 'UTC',
    programme: /* @__PURE__ */ row({
      ...{ count: 8, lengthMs: 30 * MINUTE_MS, lane: 'notDrawnYet', sitOuts: [4, 8] },
      ...{ between: 'laneChange', betweenMs: 5 * MINUTE_MS },
    }),
    rules: [
      { id: 'tracks', kind: 'tracks', value: { tracks: 1, lanes: 6 } },
      { id: 'lanes', kind: 'laneOrder', value: { moves: 'oddUpEvenDown', sitOutsAfter: [5, 2] } },
      { id: 'first-lane', kind: 'startingLane', value: { by: 'notKnownYet' } },
      { id: 'lane-change', kind: 'laneChange', value: { lengthMs: 5 * MINUTE_MS } },
      {
        id: 'sit-out',
        kind: 'sitOutDuty',
        value: { obliges: 'marshalSomePosts', posts: 'notKnownYet' },
      },
      { id: 'marshals', kind: 'marshalsOwed', value: { count: 1, when: 'sitOuts' } },
      {
        id: 'track-call',
        kind: 'clockPolicy',
        value: { clock: 'segment', under: 'trackCall', does: 'holds' },
      },
      {
        id: 'work-lane-change',
        kind: 'workAllowed',
        value: { during: 'laneChange', allowed: 'notKnownYet' },
      },
    ],
    note: 'Which segments are sat out follows from the draw: the fourth and the eighth stand here until then. One is sat out after lane 5 and one after lane 2.',
  },
}
