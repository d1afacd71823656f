import type { Sentence } from './sentence.ts'

export const drivingSegments: Sentence<'drivingSegments'> = {
  group: 'driving',
  called: 'Segments driven',
  reads:
    'Each driver[ ({who} only)] drives in[ at least {atLeast}][ at most {atMost}] <segment|segments>.',
  asks: {
    atLeast: 'In how many segments must each driver drive?',
    atMost: 'In how many segments may one driver drive?',
  },
  start: { atLeast: 'notKnownYet' },
}
