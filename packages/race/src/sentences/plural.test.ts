import { expect, it } from 'vitest'
import { countInWords, thereAre } from '../checks/in-words.ts'
import { partsOf, sentenceOf } from './in-words.ts'
import { SENTENCES } from './index.ts'
import { counted, plural, withNumber } from './plural.ts'
import { RULE_KINDS } from '../rules/kinds/index.ts'
import type { Rule, RuleKind } from '../rules/index.ts'

it('one of a thing is one in either direction, none and several are several', () => {
  expect([0, 1, -1, 2].map((count) => counted(count, 'lap'))).toEqual([
    '0 laps',
    '1 lap',
    '−1 lap',
    '2 laps',
  ])
  expect(plural(0.6, 'lap')).toBe('laps')
  expect([1, 2].map((count) => counted(count, 'person', 'people'))).toEqual([
    '1 person',
    '2 people',
  ])
  expect([0, 1, 2].map((count) => countInWords(count, 'stop'))).toEqual([
    'no stops',
    'one stop',
    '2 stops',
  ])
  expect([1, 2].map((count) => thereAre(count, 'stop'))).toEqual([
    'there is one stop',
    'there are 2 stops',
  ])
})

it('what is not known yet is several', () => {
  expect(withNumber('<lap|laps>', 'notKnownYet')).toBe('laps')
  expect(withNumber('<driver drives|drivers drive>', 1)).toBe('driver drives')
})

const NOUNS =
  'laps|lap|stops|stop|stints|stint|segments|segment|drivers|driver|lanes|lane|tracks|track|sections|section|groups|group|times|time|marshals|marshal|sets|set|motors|motor|bodies|body|cars|car|changes|change'
const COUNTED = new RegExp(`(\\d+) (?:driver )?(${NOUNS})\\b`, 'g')

/** Every part that can be there is, every count `count`; words and choices as a fresh rule has them, or the first. */
function fullRule(kind: RuleKind, count: number): Rule {
  const value = Object.fromEntries(
    Object.entries(partsOf(kind)).map(([name, part]) => [name, fullPart(part, count)]),
  )
  return { id: 'r1', kind, value } as unknown as Rule
}

function fullPart({ is, of }: ReturnType<typeof partsOf>[string], count: number): unknown {
  if (is === 'count') return count
  if (is === 'choice') return of?.[0]
  if (is === 'choices') return of
  if (is === 'yesNo') return true
  if (is === 'counts') return [count]
  if (is === 'segments' || is === 'names') return ['one']
  if (is === 'windows') return []
  return is === 'words' || is === 'category' ? 'something' : 3_600_000
}

it.for(RULE_KINDS.map(({ kind }) => kind))('the sentence of %s counts right', (kind) => {
  for (const count of [0, 1, -1, 2]) {
    const said = sentenceOf(fullRule(kind, count), { segment: () => 'Segment A' })
    expect(said).not.toMatch(/[<>|]/)
    for (const [, figure, noun = ''] of said.matchAll(COUNTED)) {
      const isOne = Number(figure) === 1
      const singular = !/(?:s|ies)$/.test(noun)
      expect([said, singular]).toEqual([said, isOne])
    }
  }
})

it('no sentence leaves a word beside a count to chance', () => {
  const bare = RULE_KINDS.flatMap(({ kind }) =>
    [...SENTENCES[kind].reads.matchAll(/\{(\w+)\} ([a-z]+s)\b/g)]
      .filter(([, part = '']) => partsOf(kind)[part]?.is === 'count')
      .map(([all]) => all),
  )
  expect(bare).toEqual([])
})

it('sentences with one and with two of a thing', () => {
  const says = (kind: RuleKind, value: unknown) =>
    sentenceOf({ id: 'r1', kind, value } as Rule, { segment: (id) => `Segment ${id}` })
  expect(says('numberOfDrivers', { atMost: 1 })).toBe('At most 1 driver drives in the race.')
  expect(says('numberOfDrivers', { atLeast: 1, atMost: 6 })).toBe(
    'At least 1 and at most 6 drivers drive in the race.',
  )
  expect(says('allowance', { count: 1, of: 'tyreSets', when: 'freely', costLaps: 1 })).toBe(
    '1 set of tyres in all with those fitted at the start, exchanged freely; each further one −1 lap.',
  )
  expect(says('allowance', { count: 2, of: 'tyreSets', when: 'freely', costLaps: 2 })).toBe(
    '2 sets of tyres in all with those fitted at the start, exchanged freely; each further one −2 laps.',
  )
  expect(says('tracks', { tracks: 1, lanes: 6, sections: 50 })).toBe(
    'The race is run on 1 track of 6 lanes, 50 sections a lap.',
  )
  expect(says('lapsBetweenChanges', { atLeast: 1 })).toBe(
    'Between two driver changes the car runs at least 1 lap.',
  )
})
