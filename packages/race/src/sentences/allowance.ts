import type { Sentence } from './sentence.ts'

export const allowance: Sentence<'allowance'> = {
  group: 'allowances',
  called: 'Allowance',
  reads:
    '{count} {of} in all with those fitted at the start, exchanged {when}[, {handling}][; each further one −{costLaps} <lap|laps>].',
  words: {
    of: {
      tyreSets: '<set|sets> of tyres',
      motors: '<motor|motors>',
      bodies: '<body|bodies>',
      chassis: 'chassis',
      cars: '<car|cars>',
    },
    when: { freely: 'freely', onFailure: 'only on failure' },
    handling: {
      marked: 'marked at scrutineering',
      lodged: 'lodged with the organiser',
      drawn: 'drawn by lot',
    },
  },
  asks: {
    count: 'How many may be used?',
    when: 'May they be exchanged freely or only on failure?',
    handling: 'Are they marked, lodged or drawn?',
    costLaps: 'What does a further one cost?',
  },
  start: { of: 'tyreSets', count: 'notKnownYet', when: 'notKnownYet' },
}
