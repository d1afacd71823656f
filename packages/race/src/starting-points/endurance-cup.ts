import { MINUTE_MS, row, type StartingPoint } from './starting-point.ts'

export const enduranceCup: StartingPoint = {
  id: 'endurance-cup-2022',
  called: 'Six hours, one segment a lane (BSCRA Endurance Cup 2022)',
  source:
    'BSCRA, Endurance Cup 1/24, 2022: slotcarracing.org.uk/24hour/2022rules.html; reports of competitors: slotcarracing.org.uk/24hour/july2022.html',
  regulations: {
    name: 'Endurance Cup, 1/24',
    timeZone: 'Europe/London',
    programme: /* @__PURE__ */ row({
      ...{ count: 8, lengthMs: 45 * MINUTE_MS },
      ...{ between: 'laneChange', lane: 'notDrawnYet' },
    }),
    rules: [
      { id: 'lane-change', kind: 'laneChange', value: { lengthMs: 'notKnownYet' } },
      { id: 'dark', kind: 'darkSegments', value: { segments: ['s5', 's6'] } },
      {
        id: 'motors',
        kind: 'allowance',
        value: { of: 'motors', count: 2, when: 'notKnownYet' },
        words: 'Reported by competitors: two motors allowed, changed in race time.',
      },
      {
        id: 'chassis',
        kind: 'allowance',
        value: { of: 'chassis', count: 1, when: 'notKnownYet', costLaps: 100 },
        words: 'Reported by competitors: a second chassis costs 100 laps.',
      },
    ],
    note: 'Eight segments, one a lane.',
  },
}
