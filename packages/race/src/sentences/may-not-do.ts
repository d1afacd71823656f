import type { Sentence } from './sentence.ts'

export const mayNotDo: Sentence<'mayNotDo'> = {
  group: 'driving',
  called: 'Who may not',
  reads: 'A {who} may not {duty}.',
  words: {
    duty: {
      controller: 'drive',
      post: 'marshal',
      wall: 'hold the wall',
      bench: 'work at the bench',
    },
  },
  start: { who: 'captain', duty: 'controller' },
}
