import type { Sentence } from './sentence.ts'

export const energy: Sentence<'energy'> = {
  group: 'stops',
  called: 'Energy',
  reads:
    'A full load lasts[ {fullLaps} <lap|laps>][ {fullMs}][, filling it takes {fillMs}][, {leftAtEnd} must be left at the end]; an empty car {atEmpty}.',
  words: { atEmpty: { stands: 'stands', slows: 'is slowed', penalty: 'is penalised' } },
  asks: {
    fullLaps: 'How many laps does a full load last?',
    fullMs: 'How long does a full load last?',
    fillMs: 'How long does filling take?',
    leftAtEnd: 'How much must be left at the end?',
    atEmpty: 'What happens to an empty car?',
  },
  start: { fullMs: 'notKnownYet', atEmpty: 'notKnownYet' },
}
