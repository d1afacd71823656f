import type { Sentence } from './sentence.ts'

export const bodyOffChassis: Sentence<'bodyOffChassis'> = {
  group: 'work',
  called: 'Body off the chassis',
  reads: 'A repair that separates body and chassis is done {allowed}[, at −{costLaps} <lap|laps>].',
  words: { allowed: { anywhere: 'anywhere', bench: 'at the bench only', never: 'not at all' } },
  asks: {
    allowed: 'Where may body and chassis be separated?',
    costLaps: 'What does separating them cost?',
  },
  start: { allowed: 'notKnownYet' },
}
