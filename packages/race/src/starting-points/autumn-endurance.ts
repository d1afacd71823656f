import { HOUR_MS, row, type StartingPoint } from './starting-point.ts'

export const autumnEndurance: StartingPoint = {
  id: 'autumn-endurance-2009',
  called: 'Twelve hours with lights (Prato 2009)',
  source: 'Endurance d’autunno a Prato, 12 h, 2009: italiaslot.com',
  regulations: {
    name: 'Autumn endurance, twelve hours',
    timeZone: 'Europe/Rome',
    programme: /* @__PURE__ */ row({ count: 1, lengthMs: 12 * HOUR_MS, between: 'laneChange' }),
    rules: [
      {
        id: 'lights',
        kind: 'penalty',
        value: {
          for: 'Segment run with lights not working',
          ...{ is: 'laps', amount: 5, per: 'occurrence', scope: 'segment' },
        },
      },
      {
        id: 'tyres',
        kind: 'allowance',
        value: { of: 'tyreSets', count: 6, when: 'notKnownYet' },
        words: 'Six sets of rear tyres, the first included.',
      },
    ],
    note: 'Into which segments the twelve hours are divided is not published: divide them here.',
  },
}
