import type { Sentence } from './sentence.ts'

export const marshalsOwed: Sentence<'marshalsOwed'> = {
  group: 'marshals',
  called: 'Marshals owed',
  reads: 'The team puts up {count} <marshal|marshals> {when}.',
  words: { when: { wholeRace: 'while any segment runs', sitOuts: 'while it sits out' } },
  asks: { count: 'How many marshals must the team put up?', when: 'When must the team marshal?' },
  start: { count: 'notKnownYet', when: 'notKnownYet' },
}
