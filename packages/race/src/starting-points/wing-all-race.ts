import type { StartingPoint } from './starting-point.ts'

export const wingAllRace: StartingPoint = {
  id: 'wing-all-race',
  called: 'GT rules with a wing all race (Dijon Racing Slot)',
  source: 'Dijon Racing Slot, GT rules, year not stated: dijon-racing-slot.com/reglement-gt',
  regulations: {
    name: 'GT, wing all race',
    timeZone: 'Europe/Paris',
    programme: [],
    rules: [
      {
        id: 'wing',
        kind: 'compulsoryRepair',
        value: { what: 'Wing', laps: 'notKnownYet', underGreen: 'notKnownYet' },
        words: 'The wing is compulsory all race.',
      },
      {
        id: 'work',
        kind: 'workAllowed',
        value: { during: 'laneChange', allowed: true, costLaps: 8 },
        words: 'Any work during a lane change costs 8 laps.',
      },
      {
        id: 'spare-car',
        kind: 'allowance',
        value: { of: 'cars', count: 1, when: 'notKnownYet', costLaps: 10 },
        words: 'The spare car costs 10 laps.',
      },
    ],
    note: 'The programme is not published: add its segments.',
  },
}
