import type { Sentence } from './sentence.ts'

export const classified: Sentence<'classified'> = {
  group: 'result',
  called: 'To be classified',
  reads: 'A team with {atLeast} of the winner’s laps is classified.',
  asks: { atLeast: 'Which share of the winner’s laps is needed to be classified?' },
  start: { atLeast: 'notKnownYet' },
}
