import type { Sentence } from './sentence.ts'

export const mandatoryStops: Sentence<'mandatoryStops'> = {
  group: 'stops',
  called: 'Mandatory stops',
  reads: '{count} <stop|stops> in {per}.',
  words: { per: { segment: 'each segment', race: 'the whole race' } },
  asks: { count: 'How many stops are demanded?' },
  start: { count: 'notKnownYet', per: 'segment' },
}
