import type { Sentence } from './sentence.ts'

export const marshalShift: Sentence<'marshalShift'> = {
  group: 'marshals',
  called: 'Marshal shifts',
  reads: 'A marshal’s shift lasts[ at most {atMostMs}][ with {restMs} of rest between two].',
  asks: {
    atMostMs: 'How long may one shift at a post be?',
    restMs: 'How long must a marshal rest between two shifts?',
  },
  start: { atMostMs: 'notKnownYet' },
}
