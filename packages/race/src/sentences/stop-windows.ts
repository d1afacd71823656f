import type { Sentence } from './sentence.ts'

export const stopWindows: Sentence<'stopWindows'> = {
  group: 'stops',
  called: 'Stop windows',
  reads: 'A stop is taken in {windows}.',
  asks: { windows: 'When are the stop windows?' },
  start: { windows: 'notKnownYet' },
}
