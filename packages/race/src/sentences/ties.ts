import type { Sentence } from './sentence.ts'

export const ties: Sentence<'ties'> = {
  group: 'result',
  called: 'Ties',
  reads: 'A tie is broken by {order}, in that order.',
  words: {
    order: {
      runOff: 'a run-off',
      bestLap: 'the best lap',
      bestSegment: 'the best segment',
      countBack: 'count-back',
      scrutineeringOrder: 'the order of scrutineering',
    },
  },
  asks: { order: 'How are ties broken?' },
  start: { order: 'notKnownYet' },
}
