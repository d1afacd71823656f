import type { Sentence } from './sentence.ts'

export const equalShare: Sentence<'equalShare'> = {
  group: 'driving',
  called: 'Equal shares',
  reads:
    'All drivers have the same {of}[, give or take {tolerance} of it][, give or take {toleranceMs}].',
  words: { of: { time: 'driving time', segments: 'number of segments' } },
  asks: {
    tolerance: 'By how much may driving times differ from the equal share?',
    toleranceMs: 'By how much may driving times differ from the equal share?',
  },
  start: { of: 'time', tolerance: 'notKnownYet' },
}
