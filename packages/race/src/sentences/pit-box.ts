import type { Sentence } from './sentence.ts'

export const pitBox: Sentence<'pitBox'> = {
  group: 'stops',
  called: 'Pit box',
  reads: 'The car stops in box {box}.',
  asks: { box: 'Which pit box is ours?' },
  start: { box: 'notKnownYet' },
}
