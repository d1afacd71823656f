import type { Sentence } from './sentence.ts'

export const drivingTime: Sentence<'drivingTime'> = {
  group: 'driving',
  called: 'Driving time',
  reads:
    'Each driver[ ({who} only)] drives[ at least {atLeastMs}][ at most {atMostMs}] in the race.',
  asks: {
    atLeastMs: 'How long must each driver drive at least?',
    atMostMs: 'How long may one driver drive at most?',
  },
  start: { atLeastMs: 'notKnownYet', atMostMs: 'notKnownYet' },
}
