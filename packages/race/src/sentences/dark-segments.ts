import type { Sentence } from './sentence.ts'

export const darkSegments: Sentence<'darkSegments'> = {
  group: 'programme',
  called: 'Dark segments',
  reads: 'The hall is dark in {segments}.',
  asks: { segments: 'Which segments are dark?' },
  start: { segments: 'notKnownYet' },
}
