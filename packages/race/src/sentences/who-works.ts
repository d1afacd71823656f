import type { Sentence } from './sentence.ts'

export const whoWorks: Sentence<'whoWorks'> = {
  group: 'work',
  called: 'Who may work',
  reads: '{who} may work on the car[, at most {atMost} at once].',
  words: {
    who: {
      anybody: 'Anybody',
      crew: 'Only the crew',
      driver: 'Only the driver',
      judges: 'Only judges',
    },
  },
  asks: { who: 'Who may work on the car?', atMost: 'How many may work on the car at once?' },
  start: { who: 'notKnownYet' },
}
