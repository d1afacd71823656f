import type { Sentence } from './sentence.ts'

export const changeWithOneself: Sentence<'changeWithOneself'> = {
  group: 'driving',
  called: 'A change with oneself',
  reads: 'A change with oneself {begins} a new stint.',
  words: { begins: { true: 'begins', false: 'does not begin' } },
  asks: { begins: 'Does a change with oneself begin a new stint?' },
  start: { begins: 'notKnownYet' },
}
