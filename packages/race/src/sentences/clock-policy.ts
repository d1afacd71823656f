import type { Sentence } from './sentence.ts'

export const clockPolicy: Sentence<'clockPolicy'> = {
  group: 'clocks',
  called: 'Clocks',
  reads: '{under} {clock} {does}.',
  words: {
    clock: {
      segment: 'the segment’s clock',
      stopMinimum: 'the minimum stop',
      driving: 'driving time',
      repairLimit: 'the time for a compulsory repair',
    },
    under: {
      trackCall: 'During a track call',
      redFlag: 'Under a red flag',
      laneChange: 'At a lane change',
    },
    does: { runs: 'goes on', holds: 'holds', startsAgain: 'starts again' },
  },
  asks: { does: 'Which clocks go on while power is off?' },
  start: { clock: 'segment', under: 'trackCall', does: 'notKnownYet' },
}
