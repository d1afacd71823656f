import type { Sentence } from './sentence.ts'

export const relief: Sentence<'relief'> = {
  group: 'marshals',
  called: 'Relief',
  reads: 'A relief {before} before the marshal leaves[, {byMs} earlier].',
  words: { before: { true: 'is at the post', false: 'need not be there' } },
  asks: {
    before: 'Must the relief be there before the marshal leaves?',
    byMs: 'How much earlier must the relief be there?',
  },
  start: { before: 'notKnownYet' },
}
