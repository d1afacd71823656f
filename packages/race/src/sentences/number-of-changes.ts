import type { Sentence } from './sentence.ts'

export const numberOfChanges: Sentence<'numberOfChanges'> = {
  group: 'driving',
  called: 'Number of changes',
  reads: 'The race has[ at least {atLeast}][ at most {atMost}] {of}.',
  words: { of: { changes: 'driver <change|changes>', stints: '<stint|stints>' } },
  asks: {
    atLeast: 'How many driver changes are demanded?',
    atMost: 'How many driver changes are allowed?',
  },
  start: { of: 'changes', atLeast: 'notKnownYet' },
}
