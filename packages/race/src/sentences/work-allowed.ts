import type { Sentence } from './sentence.ts'

export const workAllowed: Sentence<'workAllowed'> = {
  group: 'work',
  called: 'Work on the car',
  reads: '{during} work on the car is {allowed}[, at −{costLaps} <lap|laps>].',
  words: {
    during: {
      green: 'Under green',
      trackCall: 'During a track call',
      redFlag: 'Under a red flag',
      laneChange: 'At a lane change',
      break: 'In a break',
      parcFerme: 'In parc fermé',
    },
    allowed: { true: 'allowed', false: 'not allowed' },
  },
  asks: { allowed: 'When may hands work on the car?' },
  start: { during: 'trackCall', allowed: 'notKnownYet' },
}
