import { MINUTE_MS, row, type StartingPoint } from './starting-point.ts'

const REPORTED = 'Reported by competitors:'

export const fourHourEnduro: StartingPoint = {
  id: 'four-hour-enduro-2022',
  called: 'Four hours with a motor change (Florida 2022)',
  source: '4 h enduro, Florida, 2022, as competitors report it: slotblog.net topic 101081',
  regulations: {
    name: 'Four-hour enduro',
    timeZone: 'America/New_York',
    // 240 min ÷ 24 = 10 min.
    programme: /* @__PURE__ */ row({ count: 24, lengthMs: 10 * MINUTE_MS, between: 'laneChange' }),
    rules: [
      {
        id: 'motor',
        kind: 'stopTask',
        value: { task: 'Motor change', times: 1, segments: ['s12', 's13'], power: 'on' },
        words: `${REPORTED} the motor is changed in segment 12 or 13 of 24 with the power on.`,
      },
      {
        id: 'dark',
        kind: 'darkSegments',
        value: { segments: 'notKnownYet' },
        words: `${REPORTED} there are night segments; which is not said.`,
      },
      {
        id: 'lights',
        kind: 'compulsoryRepair',
        value: {
          ...{ what: 'Lights', until: 'atOnce', underGreen: 'notKnownYet' },
          when: 'darkSegments',
        },
        words: `${REPORTED} without lights there is no running in the night segments.`,
      },
    ],
    note: `${REPORTED} four hours in 24 segments; that all are of the same length is assumed here.`,
  },
}
