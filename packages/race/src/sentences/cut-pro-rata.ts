import type { Sentence } from './sentence.ts'

export const cutProRata: Sentence<'cutProRata'> = {
  group: 'driving',
  called: 'When the race is shortened',
  reads: 'When the race is shortened, limits of driving time {cut} in proportion.',
  words: { cut: { true: 'are cut', false: 'are not cut' } },
  asks: { cut: 'Are limits cut in proportion when the race is shortened?' },
  start: { cut: 'notKnownYet' },
}
