import type { Sentence } from './sentence.ts'

export const sitOutDuty: Sentence<'sitOutDuty'> = {
  group: 'programme',
  called: 'Sitting out',
  reads: 'A team that sits out {obliges}[, {posts} of them].',
  words: {
    obliges: {
      marshalAllPosts: 'marshals all posts',
      marshalSomePosts: 'marshals some posts',
      rest: 'may rest',
    },
  },
  asks: {
    obliges: 'What must a team do while it sits out?',
    posts: 'How many posts does a team that sits out fill?',
  },
  start: { obliges: 'notKnownYet' },
}
