import type { Sentence } from './sentence.ts'

export const laneChange: Sentence<'laneChange'> = {
  group: 'programme',
  called: 'Lane change',
  reads:
    'A lane change takes {lengthMs}[; the next start comes after {earliestMs} at the earliest][; the car is moved by {movedBy}].',
  words: { movedBy: { us: 'us', judges: 'the judges' } },
  asks: {
    lengthMs: 'How long is a lane change?',
    movedBy: 'Who moves the car from lane to lane?',
    earliestMs: 'How early may the next segment start?',
  },
  start: { lengthMs: 'notKnownYet' },
}
