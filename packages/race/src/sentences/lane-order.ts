import type { Sentence } from './sentence.ts'

export const laneOrder: Sentence<'laneOrder'> = {
  group: 'programme',
  called: 'Order of lanes',
  reads:
    'Cars move {moves}[, lanes in the order {sequence}][, sitting out one segment after lane {sitOutsAfter}][, {groups} <group|groups> taking turns].',
  words: {
    moves: {
      oddUpEvenDown: 'odd lanes up, even lanes down',
      sequence: 'by a fixed sequence',
      groups: 'in groups',
    },
  },
  asks: {
    moves: 'In which order do cars move over the lanes?',
    sitOutsAfter: 'After which lanes does a team sit out?',
    groups: 'How many groups take turns?',
  },
  start: { moves: 'notKnownYet' },
}
