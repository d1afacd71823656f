import type { Sentence } from './sentence.ts'

export const points: Sentence<'points'> = {
  group: 'result',
  called: 'Points',
  reads: 'Points for each {per}: {table}.',
  words: { per: { segment: 'segment', stage: 'stage' } },
  asks: { table: 'How many points does each place bring?' },
  start: { per: 'stage', table: 'notKnownYet' },
}
