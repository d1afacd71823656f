import type { Sentence } from './sentence.ts'

export const followingDrivers: Sentence<'followingDrivers'> = {
  group: 'driving',
  called: 'Who follows whom',
  reads: 'After a {first} a {then} {must} drive.',
  words: { must: { must: 'must', mustNot: 'must not' } },
  asks: { must: 'Who must, or must not, follow whom at the controller?' },
  start: { first: 'novice', must: 'mustNot', then: 'novice' },
}
