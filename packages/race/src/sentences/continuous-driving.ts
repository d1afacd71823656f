import type { Sentence } from './sentence.ts'

export const continuousDriving: Sentence<'continuousDriving'> = {
  group: 'driving',
  called: 'Without a break',
  reads: 'A stint[ ({who} only)] lasts[ at least {atLeastMs}][ at most {atMostMs}].',
  asks: {
    atLeastMs: 'How long is a stint at least?',
    atMostMs: 'How long may somebody drive without a break?',
  },
  start: { atMostMs: 'notKnownYet' },
}
