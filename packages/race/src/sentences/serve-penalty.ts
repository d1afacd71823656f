import type { Sentence } from './sentence.ts'

export const servePenalty: Sentence<'servePenalty'> = {
  group: 'stops',
  called: 'Serving a penalty',
  reads: 'A {penalty} is served within {withinLaps} <lap|laps>.',
  words: { penalty: { driveThrough: 'drive-through', stopAndGo: 'stop-and-go' } },
  asks: { withinLaps: 'Within how many laps is a penalty served?' },
  start: { penalty: 'stopAndGo', withinLaps: 'notKnownYet' },
}
