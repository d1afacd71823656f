import type { Sentence } from './sentence.ts'

export const laneChange: Sentence<'laneChange'> = {
  group: 'programme',
  called: 'Lane change',
  reads:
    'A lane change takes {lengthMs}[; the next start comes after {earliestMs} at the earliest].',
  asks: {
    lengthMs: 'How long is a lane change?',
    earliestMs: 'How early may the next segment start?',
  },
  start: { lengthMs: 'notKnownYet' },
}
