import { MINUTE_MS, NO_SOURCE, row, type StartingPoint } from './starting-point.ts'

export const digitalThreeForties: StartingPoint = {
  id: 'digital-three-forties',
  called: 'Digital: three segments of 40 minutes, two stops in each',
  source: NO_SOURCE,
  regulations: {
    name: 'Digital, three forties',
    timeZone: 'UTC',
    programme: /* @__PURE__ */ row({
      ...{ count: 3, lengthMs: 40 * MINUTE_MS },
      ...{ between: 'break', betweenMs: 10 * MINUTE_MS },
    }),
    rules: [
      { id: 'stops', kind: 'mandatoryStops', value: { count: 2, per: 'segment' } },
      {
        id: 'stop-minimum',
        kind: 'stopMinimum',
        value: { minimumMs: 'notKnownYet', from: 'notKnownYet', to: 'notKnownYet' },
      },
      { id: 'stop-windows', kind: 'stopWindows', value: { windows: 'notKnownYet' } },
      {
        id: 'change',
        kind: 'driverChange',
        value: { where: 'stoppedInPitLane', order: 'notKnownYet' },
      },
      {
        id: 'energy',
        kind: 'energy',
        value: { fullMs: 'notKnownYet', atEmpty: 'notKnownYet' },
      },
      {
        id: 'track-call',
        kind: 'clockPolicy',
        value: { clock: 'segment', under: 'trackCall', does: 'holds' },
      },
      {
        id: 'track-call-stop',
        kind: 'clockPolicy',
        value: { clock: 'stopMinimum', under: 'trackCall', does: 'notKnownYet' },
      },
      {
        id: 'work-track-call',
        kind: 'workAllowed',
        value: { during: 'trackCall', allowed: false },
      },
    ],
  },
}
