import type { Sentence } from './sentence.ts'

export const drivingShare: Sentence<'drivingShare'> = {
  group: 'driving',
  called: 'Share of the race',
  reads:
    'Each driver[ ({who} only)] drives[ at least {atLeast}][ at most {atMost}] of the race[ if it is longer than {longerThanMs}].',
  asks: {
    atLeast: 'Which share must each driver drive at least?',
    atMost: 'Which share may one driver drive at most?',
  },
  start: { atMost: 'notKnownYet' },
}
