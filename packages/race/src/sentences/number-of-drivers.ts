import type { Sentence } from './sentence.ts'

export const numberOfDrivers: Sentence<'numberOfDrivers'> = {
  group: 'driving',
  called: 'Number of drivers',
  reads: '[At least {atLeast}][ at most {atMost}] <driver drives|drivers drive> in the race.',
  asks: {
    atLeast: 'How many drivers must a team have?',
    atMost: 'How many drivers may a team have?',
  },
  start: { atLeast: 'notKnownYet' },
}
