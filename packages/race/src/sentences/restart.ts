import type { Sentence } from './sentence.ts'

export const restart: Sentence<'restart'> = {
  group: 'programme',
  called: 'Restart',
  reads: 'After a lane change the car restarts {at}.',
  words: {
    at: {
      sameSection: 'in the section it stopped in',
      straightAcross: 'straight across',
      startLine: 'from the start line',
    },
  },
  asks: { at: 'Where does the car restart after a lane change?' },
  start: { at: 'notKnownYet' },
}
