import type { Sentence } from './sentence.ts'

export const driverRest: Sentence<'driverRest'> = {
  group: 'driving',
  called: 'Rest',
  reads:
    'Between two stints[ ({who} only)] there is rest[ of at least {atLeastMs}][ of at least {shareOfStint} of the stint before]; marshalling {marshalling}.',
  words: { marshalling: { isRest: 'is rest', isNotRest: 'is not rest' } },
  asks: {
    atLeastMs: 'How long must a driver rest between two stints?',
    shareOfStint: 'Which share of the last stint must the rest be?',
    marshalling: 'Does marshalling count as rest?',
  },
  start: { atLeastMs: 'notKnownYet', marshalling: 'notKnownYet' },
}
