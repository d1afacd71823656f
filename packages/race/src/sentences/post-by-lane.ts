import type { Sentence } from './sentence.ts'

export const postByLane: Sentence<'postByLane'> = {
  group: 'marshals',
  called: 'Post and lane',
  reads: 'Our post {tied} the number of our lane.',
  words: { tied: { true: 'has', false: 'need not have' } },
  asks: { tied: 'Is the post tied to the lane?' },
  start: { tied: 'notKnownYet' },
}
