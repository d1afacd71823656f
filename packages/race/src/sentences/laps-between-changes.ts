import type { Sentence } from './sentence.ts'

export const lapsBetweenChanges: Sentence<'lapsBetweenChanges'> = {
  group: 'driving',
  called: 'Laps between changes',
  reads: 'Between two driver changes the car runs at least {atLeast} <lap|laps>.',
  asks: { atLeast: 'How many laps must the car run between two driver changes?' },
  start: { atLeast: 'notKnownYet' },
}
