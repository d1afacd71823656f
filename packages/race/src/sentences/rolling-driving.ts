import type { Sentence } from './sentence.ts'

export const rollingDriving: Sentence<'rollingDriving'> = {
  group: 'driving',
  called: 'In any window',
  reads: 'Nobody[ ({who} only)] drives more than {atMostMs} in any {withinMs}.',
  asks: {
    atMostMs: 'How much may somebody drive within the window?',
    withinMs: 'In which window of time is driving limited?',
  },
  start: { atMostMs: 'notKnownYet', withinMs: 'notKnownYet' },
}
