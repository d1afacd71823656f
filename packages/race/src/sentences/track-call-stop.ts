import type { Sentence } from './sentence.ts'

export const trackCallStop: Sentence<'trackCallStop'> = {
  group: 'stops',
  called: 'Stops under a track call',
  reads: 'During a track call the car {mayLeave} the pit lane; a window {windowExtended}.',
  words: {
    mayLeave: { true: 'may leave', false: 'may not leave' },
    windowExtended: { true: 'is extended by it', false: 'is not extended' },
  },
  asks: {
    mayLeave: 'May the car leave the pit lane while power is off?',
    windowExtended: 'Is a stop window extended by a track call?',
  },
  start: { mayLeave: 'notKnownYet', windowExtended: 'notKnownYet' },
}
