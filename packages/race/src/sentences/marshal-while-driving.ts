import type { Sentence } from './sentence.ts'

export const marshalWhileDriving: Sentence<'marshalWhileDriving'> = {
  group: 'marshals',
  called: 'Marshalling while driving',
  reads: 'Somebody who drives {allowed} marshal at the same time.',
  words: { allowed: { true: 'may', false: 'may not' } },
  asks: { allowed: 'May somebody marshal while driving?' },
  start: { allowed: false },
}
