import type { Sentence } from './sentence.ts'

export const closedPeriod: Sentence<'closedPeriod'> = {
  group: 'stops',
  called: 'Closed period',
  reads: 'No stop[ in the first {firstMs}][ in the last {lastMs}] of {of}.',
  words: { of: { segment: 'a segment', race: 'the race' } },
  asks: {
    firstMs: 'Until when is no stop taken at the beginning?',
    lastMs: 'How long before the end is the last stop taken?',
  },
  start: { of: 'race', lastMs: 'notKnownYet' },
}
