import type { Sentence } from './sentence.ts'

export const changeAtStop: Sentence<'changeAtStop'> = {
  group: 'driving',
  called: 'Change at every stop',
  reads: 'The driver {changes} at every mandatory stop.',
  words: { changes: { true: 'changes', false: 'need not change' } },
  asks: { changes: 'Must the driver change at every stop?' },
  start: { changes: 'notKnownYet' },
}
