import type { Sentence } from './sentence.ts'

export const stintsEach: Sentence<'stintsEach'> = {
  group: 'driving',
  called: 'Stints a driver',
  reads: 'Each driver[ ({who} only)] has[ at least {atLeast}][ at most {atMost}] <stint|stints>.',
  asks: {
    atLeast: 'How many stints must each driver have?',
    atMost: 'How many stints may one driver have?',
  },
  start: { atLeast: 'notKnownYet' },
}
