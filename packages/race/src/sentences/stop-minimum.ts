import type { Sentence } from './sentence.ts'

export const stopMinimum: Sentence<'stopMinimum'> = {
  group: 'stops',
  called: 'Minimum stop',
  reads: 'Each lasts at least {minimumMs}, timed from {from} to {to}.',
  words: {
    from: { pitEntry: 'the pit entry', stopped: 'the car stopped' },
    to: { leaving: 'wheels turning', pitExit: 'the pit exit' },
  },
  asks: {
    minimumMs: 'How long is a stop at least?',
    from: 'From which moment is a stop timed: the pit entry, or the car standing?',
    to: 'Until which moment is it timed: wheels turning, or the pit exit?',
  },
  start: { minimumMs: 'notKnownYet', from: 'notKnownYet', to: 'notKnownYet' },
}
