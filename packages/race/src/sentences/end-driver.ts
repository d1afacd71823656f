import type { Sentence } from './sentence.ts'

export const endDriver: Sentence<'endDriver'> = {
  group: 'driving',
  called: 'First and last driver',
  reads: 'A {who} {may} drive {which}.',
  words: { which: { first: 'first', last: 'last' }, may: { must: 'must', mayNot: 'may not' } },
  asks: { may: 'Is there a limit on who drives first or last?' },
  start: { which: 'first', who: 'novice', may: 'mayNot' },
}
