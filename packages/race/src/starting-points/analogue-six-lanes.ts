import { MINUTE_MS, NO_SOURCE, row, type StartingPoint } from './starting-point.ts'

export const analogueSixLanes: StartingPoint = {
  id: 'analogue-six-lanes',
  called: 'Analogue: one segment on each of six lanes',
  source: NO_SOURCE,
  regulations: {
    name: 'Analogue, six lanes',
    timeZone: 'UTC',
    programme: /* @__PURE__ */ row({
      ...{ count: 6, lengthMs: 30 * MINUTE_MS, lane: 'notDrawnYet' },
      ...{ between: 'laneChange', betweenMs: 5 * MINUTE_MS },
    }),
    rules: [
      { id: 'tracks', kind: 'tracks', value: { tracks: 1, lanes: 6 } },
      { id: 'lanes', kind: 'laneOrder', value: { moves: 'oddUpEvenDown' } },
      { id: 'first-lane', kind: 'startingLane', value: { by: 'notKnownYet' } },
      { id: 'lane-change', kind: 'laneChange', value: { lengthMs: 5 * MINUTE_MS } },
      { id: 'restart', kind: 'restart', value: { at: 'notKnownYet' } },
      { id: 'marshals', kind: 'marshalsOwed', value: { count: 1, when: 'wholeRace' } },
      { id: 'marshal-driving', kind: 'marshalWhileDriving', value: { allowed: false } },
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
  },
}
