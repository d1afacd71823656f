import type { Sentence } from './sentence.ts'

export const driverChange: Sentence<'driverChange'> = {
  group: 'stops',
  called: 'Driver change',
  reads: 'Drivers change {where}; {order}.',
  words: {
    where: { stoppedInPitLane: 'with the car stopped in the pit lane', anywhere: 'anywhere' },
    order: {
      downFirst: 'the old one is down before the new one is up',
      anyOrder: 'the order is free',
    },
  },
  asks: {
    where: 'Where may drivers change?',
    order: 'Must the old driver be down before the new one is up?',
  },
  start: { where: 'notKnownYet', order: 'notKnownYet' },
}
