import type { Sentence } from './sentence.ts'

export const penalty: Sentence<'penalty'> = {
  group: 'penalties',
  called: 'Penalty',
  reads:
    '{for}: {is}[: {amount}], {per}, in {scope}[, served within {withinLaps} <lap|laps>][; repeated, it {grows}][; contestable for {contestableMs}].',
  words: {
    is: {
      warning: 'a warning',
      laps: 'laps lost',
      seconds: 'seconds held',
      stopAndGo: 'stop-and-go',
      driveThrough: 'drive-through',
      position: 'places lost',
      segmentLost: 'the segment lost',
      exclusion: 'exclusion',
    },
    per: { occurrence: 'each time', lap: 'for each lap', secondShort: 'for each second short' },
    scope: { segment: 'the segment', stage: 'the stage', race: 'the race' },
    grows: { true: 'grows', false: 'stays the same' },
  },
  asks: {
    is: 'What does a breach cost?',
    amount: 'How much does it cost?',
    withinLaps: 'Within how many laps is it served?',
    grows: 'Does it grow when repeated?',
    contestableMs: 'How long may it be contested?',
  },
  start: { for: 'Stop left early', is: 'notKnownYet', per: 'occurrence', scope: 'race' },
}
