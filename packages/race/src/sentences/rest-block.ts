import type { Sentence } from './sentence.ts'

export const restBlock: Sentence<'restBlock'> = {
  group: 'driving',
  called: 'One long rest',
  reads:
    'Everybody[ ({who} only)] has one rest of at least {atLeastMs} without a break[ after {from}][ before {to}]; marshalling {marshalling}.',
  words: { marshalling: { isRest: 'is rest', isNotRest: 'is not rest' } },
  asks: {
    atLeastMs: 'How long must everybody’s one long rest be?',
    from: 'From when by the clock does the long rest count?',
    to: 'Until when by the clock does the long rest count?',
    marshalling: 'Does marshalling break the long rest?',
  },
  start: { atLeastMs: 'notKnownYet', marshalling: 'notKnownYet' },
}
