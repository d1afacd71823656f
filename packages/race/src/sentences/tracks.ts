import type { Sentence } from './sentence.ts'

export const tracks: Sentence<'tracks'> = {
  group: 'programme',
  called: 'Tracks and lanes',
  reads:
    'The race is run on {tracks} <track|tracks> of {lanes} <lane|lanes>[, {sections} <section|sections> a lap][; the lanes are {colours}].',
  asks: {
    tracks: 'On how many tracks is the race run?',
    lanes: 'How many lanes has a track?',
    sections: 'Into how many sections is a lap divided?',
    colours: 'Which colours have the lanes, in order?',
  },
  start: { tracks: 1, lanes: 'notKnownYet' },
}
