import { saidTokens } from '@pitlamp/race'
import { expect, it } from 'vitest'
import { phrasesOf } from './phrases.ts'

it('keeps punctuation with the value before it', () => {
  const relief = { before: true, byMs: 60_000 }
  expect(phrasesOf(saidTokens({ id: 'r1', kind: 'relief', value: relief }))).toEqual([
    { words: 'A relief ', part: 'before', tail: '' },
    { words: ' before the marshal leaves, ', part: 'byMs', tail: '' },
    { words: ' earlier.', tail: '' },
  ])
  const minimum = { minimumMs: 45_000, from: 'stopped', to: 'leaving' } as const
  expect(phrasesOf(saidTokens({ id: 'r2', kind: 'stopMinimum', value: minimum }))).toEqual([
    { words: 'Each lasts at least ', part: 'minimumMs', tail: ',' },
    { words: ' timed from ', part: 'from', tail: '' },
    { words: ' to ', part: 'to', tail: '.' },
  ])
})
