import type { Sentence } from './sentence.ts'

export const stintsInARow: Sentence<'stintsInARow'> = {
  group: 'driving',
  called: 'Stints in a row',
  reads: 'Nobody drives more than {atMost} <stint|stints> in a row.',
  asks: { atMost: 'How many stints in a row may somebody drive?' },
  start: { atMost: 'notKnownYet' },
}
