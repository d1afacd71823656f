import type { Sentence } from './sentence.ts'

export const scoring: Sentence<'scoring'> = {
  group: 'result',
  called: 'Result',
  reads: 'The result counts {by}[; sections are {sections} between segments].',
  words: {
    by: { laps: 'laps', lapsAndSections: 'laps and sections' },
    sections: { carriedOn: 'carried on', added: 'added up', dropped: 'dropped' },
  },
  asks: {
    by: 'Do sections count in the result?',
    sections: 'What becomes of sections between segments?',
  },
  start: { by: 'notKnownYet' },
}
