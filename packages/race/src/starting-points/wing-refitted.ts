import type { StartingPoint } from './starting-point.ts'

export const wingRefitted: StartingPoint = {
  id: 'wing-refitted',
  called: 'A lost wing refitted (Icària Slot)',
  source: 'Icària Slot, general rules, year not stated: icariaslot.cat/reglaments',
  regulations: {
    name: 'Wing lost and refitted',
    timeZone: 'Europe/Madrid',
    programme: [],
    rules: [
      {
        id: 'wing',
        kind: 'compulsoryRepair',
        value: {
          what: 'Wing',
          laps: 4,
          underGreen: 'notKnownYet',
          firstTime: 'laneChange',
          causedByOthers: 'asFirst',
          elseAtStop: 'nothing',
        },
        words:
          'The first time at the next lane change, and nothing else is done at that stop; afterwards within 4 laps. A loss caused by a marshal or another car counts as a first one.',
      },
    ],
    note: 'The programme is not published: add its segments.',
  },
}
