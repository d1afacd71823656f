import type { Sentence } from './sentence.ts'

export const stopRhythm: Sentence<'stopRhythm'> = {
  group: 'stops',
  called: 'Rhythm of stops',
  reads: 'One stop at every full {everyMs} of the race, give or take {toleranceMs}.',
  asks: {
    everyMs: 'After how much racing is each stop due?',
    toleranceMs: 'How early or late may a stop be?',
  },
  start: { everyMs: 'notKnownYet', toleranceMs: 'notKnownYet' },
}
