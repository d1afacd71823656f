import { expect, it } from 'vitest'
import { optionalParts, saidTokens, tokensOf } from './tokens.ts'

it('takes a sentence apart into words, parts and optional groups', () => {
  expect(tokensOf('relief')).toEqual([
    { is: 'words', words: 'A relief ' },
    { is: 'part', part: 'before' },
    { is: 'words', words: ' before the marshal leaves' },
    {
      is: 'optional',
      part: 'byMs',
      tokens: [
        { is: 'words', words: ', ' },
        { is: 'part', part: 'byMs' },
        { is: 'words', words: ' earlier' },
      ],
    },
    { is: 'words', words: '.' },
  ])
})

it('keeps of a rule only what it says, words together', () => {
  expect(saidTokens({ id: 'r1', kind: 'relief', value: { before: true } })).toEqual([
    { is: 'words', words: 'A relief ' },
    { is: 'part', part: 'before' },
    { is: 'words', words: ' before the marshal leaves.' },
  ])
})

it('names what may be left out, in the order of the sentence', () => {
  expect(optionalParts('driverRest').map(({ part }) => part)).toEqual([
    'who',
    'atLeastMs',
    'shareOfStint',
  ])
})
