import type { Sentence } from './sentence.ts'

export const countsAsDriving: Sentence<'countsAsDriving'> = {
  group: 'driving',
  called: 'What counts as driving',
  reads: '{what} {counts} as driving time[; in control is {inControl}].',
  words: {
    what: { stops: 'A stop', repair: 'Repair', waitingForRepair: 'Waiting for repair' },
    counts: { true: 'counts', false: 'does not count' },
    inControl: { lastDriver: 'the last driver', nextDriver: 'the next driver', nobody: 'nobody' },
  },
  asks: {
    counts: 'Do stops, repair and waiting count as driving time?',
    inControl: 'Who answers for the car while it does not run?',
  },
  start: { what: 'stops', counts: 'notKnownYet' },
}
