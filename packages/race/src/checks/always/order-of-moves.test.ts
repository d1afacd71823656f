import { expect, test } from 'vitest'
import type { Rule } from '../../rules/index.ts'
import type { TimelineStop } from '../../timeline/stops.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import { drive, found, span, stop } from '../testing/judging.ts'
import { sentences } from '../testing/verdicts.ts'

interface With {
  readonly rules?: readonly Rule[]
  readonly stops?: readonly TimelineStop[]
}

const judge = (spans: readonly TimelineSpan[], { rules = [], stops = [] }: With = {}) =>
  found({ spans, also: rules, stops }).filter(({ id }) => id === 'orderOfMoves:ring')

const post = (person: string, from: number, to: number) => span({ person, duty: 'post' }, from, to)
const at = (post: string, person: string) => (from: number, to: number) =>
  span({ person, duty: 'post', post }, from, to)
const wall = (person: string, from: number, to: number) => span({ person, duty: 'wall' }, from, to)

const relief = (before: boolean): Rule => ({ id: 'relief', kind: 'relief', value: { before } })
const downFirst: Rule = {
  ...{ id: 'down', kind: 'driverChange' },
  value: { where: 'stoppedInPitLane', order: 'downFirst' },
}

// Ana and Ben change places at minute 30, the one at the controller and the other at post 4.
const swap = [
  ...[drive('Ana', 0, 30), at('4', 'Ana')(30, 60)],
  ...[at('4', 'Ben')(0, 30), drive('Ben', 30, 60)],
]

test('two cannot change places between the controller and a post while the car runs', () => {
  expect(sentences(judge(swap))).toEqual([
    'Ana and Ben cannot hand over at 0:30 of segment 1: each would have to move before the next.',
  ])
  expect(judge(swap)[0]?.people).toEqual(['Ana', 'Ben'])
})

test('in a stop they can: the relief first, the controller empty for a moment', () => {
  expect(judge(swap, { stops: [stop(30)] })).toEqual([])
  expect(judge(swap, { stops: [stop(31)] })).toHaveLength(1)
  const minute: Rule = {
    ...{ id: 'minimum', kind: 'stopMinimum' },
    value: { minimumMs: 60_000, from: 'stopped', to: 'leaving' },
  }
  expect(judge(swap, { stops: [stop(29)], rules: [minute] })).toEqual([])
  expect(judge(swap, { stops: [stop(28)], rules: [minute] })).toHaveLength(1)
})

test('they can where the old driver is down first, or where no relief has to be there', () => {
  expect(judge(swap, { rules: [downFirst] })).toEqual([])
  expect(judge(swap, { rules: [relief(false)] })).toEqual([])
  expect(judge(swap, { rules: [relief(true)] })).toHaveLength(1)
})

test('with a third who is free there is an order', () => {
  // Cara to the controller, Ana to the post, Ben to the wall.
  const spans = [
    ...[drive('Ana', 0, 30), at('4', 'Ana')(30, 60)],
    ...[at('4', 'Ben')(0, 30), wall('Ben', 30, 60)],
    ...[wall('Cara', 0, 30), drive('Cara', 30, 60)],
  ]
  expect(judge(spans)).toEqual([])
})

test('three in a ring wait for each other, and are named', () => {
  // Ana from the controller to post 4, Ben from there to post 5, Cara from there to the controller.
  const spans = [
    ...[drive('Ana', 0, 30), at('4', 'Ana')(30, 60)],
    ...[at('4', 'Ben')(0, 30), at('5', 'Ben')(30, 60)],
    ...[at('5', 'Cara')(0, 30), drive('Cara', 30, 60)],
  ]
  expect(judge(spans)[0]?.people).toHaveLength(3)
  // Old driver down first: Ana may go to post 4 at once, Ben to 5, Cara to the controller.
  expect(judge(spans, { rules: [downFirst] })).toEqual([])
})

test('a longer way round is a ring as well, and the old driver down first breaks it', () => {
  // Ana from the controller to post 5, Cara from there to post 4, Ben from there to the controller. New driver up
  // first: Ben before Ana, Ana before Cara, Cara before Ben. Old one down first: Ana, then Cara, then Ben.
  const spans = [
    ...[drive('Ana', 0, 30), at('5', 'Ana')(30, 60)],
    ...[at('4', 'Ben')(0, 30), drive('Ben', 30, 60)],
    ...[at('5', 'Cara')(0, 30), at('4', 'Cara')(30, 60)],
  ]
  expect(judge(spans, { rules: [downFirst] })).toEqual([])
  expect(judge(spans)).toHaveLength(1)
})

test('two marshals cannot change posts whoever drives', () => {
  const spans = [
    ...[at('4', 'Ben')(0, 30), at('5', 'Ben')(30, 60)],
    ...[at('5', 'Cara')(0, 30), at('4', 'Cara')(30, 60)],
  ]
  expect(judge(spans, { rules: [downFirst], stops: [stop(30)] })).toHaveLength(1)
})

test('at posts without a name whoever is free relieves first', () => {
  // Dan comes from the wall: he relieves Ben, Ben drives, Ana relieves Cara.
  const spans = [
    ...[drive('Ana', 0, 30), post('Ana', 30, 60)],
    ...[post('Ben', 0, 30), drive('Ben', 30, 60)],
    ...[post('Cara', 0, 30), wall('Cara', 30, 60)],
    ...[wall('Dan', 0, 30), post('Dan', 30, 60)],
  ]
  expect(judge(spans)).toEqual([])
})

test('wall and bench may be empty for a moment, and what was raced was done', () => {
  const spans = [
    ...[drive('Ana', 0, 30), wall('Ana', 30, 60)],
    ...[wall('Ben', 0, 30), drive('Ben', 30, 60)],
  ]
  expect(judge(spans)).toEqual([])
  expect(judge(swap.map((one) => ({ ...one, done: true })))).toEqual([])
})
