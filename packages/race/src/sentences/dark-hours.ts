import type { Sentence } from './sentence.ts'

export const darkHours: Sentence<'darkHours'> = {
  group: 'programme',
  called: 'Dark hours',
  reads: 'The hall is dark from {from} to {to} by the clock.',
  asks: { from: 'From when is it dark?', to: 'Until when is it dark?' },
  start: { from: 'notKnownYet', to: 'notKnownYet' },
}
