import type { Sentence } from './sentence.ts'

export const drivingSpread: Sentence<'drivingSpread'> = {
  group: 'driving',
  called: 'Spread between drivers',
  reads: 'Driving times of two drivers differ by at most {atMostMs}.',
  asks: { atMostMs: 'How far apart may the drivers’ times be?' },
  start: { atMostMs: 'notKnownYet' },
}
