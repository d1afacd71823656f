import type { Sentence } from './sentence.ts'

export const numberOfChanges: Sentence<'numberOfChanges'> = {
  group: 'driving',
  called: 'Number of changes',
  reads: 'There are[ at least {atLeast}][ at most {atMost}] {of} in the race.',
  words: { of: { changes: 'driver changes', stints: 'stints' } },
  asks: {
    atLeast: 'How many driver changes are demanded?',
    atMost: 'How many driver changes are allowed?',
  },
  start: { of: 'changes', atLeast: 'notKnownYet' },
}
