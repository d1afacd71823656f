import type { Sentence } from './sentence.ts'

export const runningBetweenStops: Sentence<'runningBetweenStops'> = {
  group: 'driving',
  called: 'Between two stops',
  reads: 'Between two stops the car runs at least {atLeastMs}.',
  asks: { atLeastMs: 'How long must the car run between two stops?' },
  start: { atLeastMs: 'notKnownYet' },
}
