import type { Sentence } from './sentence.ts'

export const blockDriving: Sentence<'blockDriving'> = {
  group: 'driving',
  called: 'In fixed blocks',
  reads: 'In each block of {blockMs} a driver drives[ at least {atLeastMs}][ at most {atMostMs}].',
  asks: {
    blockMs: 'How long are the blocks?',
    atLeastMs: 'How much must each drive in a block?',
    atMostMs: 'How much may somebody drive in a block?',
  },
  start: { blockMs: 'notKnownYet', atMostMs: 'notKnownYet' },
}
