import type { Sentence } from './sentence.ts'

export const startingLane: Sentence<'startingLane'> = {
  group: 'programme',
  called: 'Starting lane',
  reads: 'The starting lane is found by {by}.',
  words: { by: { draw: 'a draw', qualifying: 'qualifying', choice: 'choice' } },
  asks: { by: 'How is the starting lane found?' },
  start: { by: 'notKnownYet' },
}
