import type { Sentence } from './sentence.ts'

export const pitLaneLap: Sentence<'pitLaneLap'> = {
  group: 'stops',
  called: 'A lap through the pit lane',
  reads: 'A lap through the pit lane {counts}.',
  words: { counts: { true: 'counts', false: 'does not count' } },
  asks: { counts: 'Does passing through the pit lane count a lap?' },
  start: { counts: 'notKnownYet' },
}
