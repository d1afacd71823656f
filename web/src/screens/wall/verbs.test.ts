import type { Kind, Phase, SegmentPlace } from '@pitlamp/race'
import { expect, test } from 'vitest'
import type { VerbContext } from './verb-context.ts'
import { moreFor, sheetsInStop, verbsFor } from './verbs.ts'

const place = (index: number): SegmentPlace => ({
  item: { id: `s${index}`, kind: 'segment', length: { by: 'time', lengthMs: 1 } },
  index,
  of: 3,
})

function inPhase(phase: Phase, change: Partial<VerbContext> = {}): VerbContext {
  const here = { hasCrew: true, hasLanes: true, hasEnergy: true, carIn: 'stopped' } as const
  return { phase, may: () => true, ...here, ...change }
}
const words = (context: VerbContext) => verbsFor(context).map(({ word }) => word)
const more = (context: VerbContext) => moreFor(context).map(({ word }) => word)

test('before the start', () => {
  const context = inPhase({ phase: 'beforeStart', next: place(0) })
  expect(words(context)).toEqual(['Green', 'Lane', 'Who is here', 'Fault', 'Note', 'More'])
  expect(more(context)).toEqual([
    'Change',
    'Call somebody',
    'Take over a duty',
    'Measure',
    'Work',
    'Race control said',
  ])
})

test('under green', () => {
  const context = inPhase({ phase: 'green', segment: place(1) })
  expect(words(context)).toEqual([
    'Car in',
    'Change',
    'De-slot',
    'Fault',
    'Power is off',
    'Race control said',
    'More',
  ])
  expect(more(context)).toEqual([
    'Segment over',
    'Standing',
    'Set clock',
    'Call somebody',
    'Note',
    'Who is here',
    'Energy',
    'Measure',
    'Take over a duty',
    'Red flag',
    'Wrong lane',
    'Contact',
    'Stuck',
  ])
})

test('with the power off', () => {
  const context = inPhase({ phase: 'powerOff', cause: 'trackCall', segment: place(1) })
  expect(words(context)).toEqual([
    'Power is on',
    'Segment over',
    'Set clock',
    'Fault',
    'Race control said',
    'Note',
    'More',
  ])
})

test('after a red flag cars run again by a green, and it cannot be shown twice', () => {
  const context = inPhase({ phase: 'powerOff', cause: 'redFlag', segment: place(1) })
  expect(verbsFor(context)[0]).toEqual({ id: 'greenAgain', word: 'Green', first: true })
  expect(more(context)).not.toContain('Red flag')
})

test('between segments', () => {
  const context = inPhase({ phase: 'between', segment: place(0), next: place(1) })
  expect(words(context)).toEqual(['Green', 'Measure', 'Work', 'Who is here', 'Note', 'More'])
  expect(verbsFor(context)[0]?.hint).toBe('segment 2')
})

test('the end of the last segment is the flag', () => {
  expect(more(inPhase({ phase: 'green', segment: place(2) }))[0]).toBe('Flag')
  expect(words(inPhase({ phase: 'finished', segment: place(2) }))).toEqual([
    'Fault',
    'Note',
    'More',
  ])
})

test('no verb stands there that this device may not record', () => {
  const crew: readonly Kind[] = ['incident.1', 'faultNoted.1', 'note.1', 'handover.1']
  const context = inPhase(
    { phase: 'green', segment: place(1) },
    { may: (kind) => crew.includes(kind) },
  )
  expect(words(context)).toEqual(['Change', 'De-slot', 'Fault', 'More'])
})

test('without people nobody can be moved or called, without a segment nothing goes green', () => {
  const context = inPhase({ phase: 'beforeStart' }, { hasCrew: false })
  expect(words(context)).toEqual(['Fault', 'Note', 'More'])
  expect(more(context)).toEqual(['Measure', 'Work', 'Race control said'])
})

test('a verb that means nothing here is left out and the others close up', () => {
  const before: Phase = { phase: 'beforeStart', next: place(0) }
  expect(words(inPhase(before, { hasLanes: false }))).toEqual([
    'Green',
    'Who is here',
    'Fault',
    'Note',
    'More',
  ])
  const green: Phase = { phase: 'green', segment: place(1) }
  expect(more(inPhase(green, { hasEnergy: false }))).not.toContain('Energy')
})

test('a car that is in does not come in again', () => {
  const carIn = { entry: 'x', moments: {}, work: [] }
  const context = inPhase({ phase: 'powerOff', cause: 'trackCall', segment: place(1), carIn })
  expect(more(context)).not.toContain('Car in')
})

test('in a stop whatever lays a sheet stands on the stop too, but for a fault, which is stamped first', () => {
  const carIn = { entry: 'x', moments: {}, work: [] }
  const context = inPhase({ phase: 'green', segment: place(1), carIn })
  expect(sheetsInStop(context).map(({ word }) => word)).toEqual([
    'Race control said',
    'Call somebody',
    'Note',
    'Set clock',
    'Energy',
    'Measure',
    'Standing',
    'Who is here',
  ])
  expect(more(context)).toContain('Fault')
  expect(more(context)).toContain('Segment over')
})

test('Car in says which moment it stands for', () => {
  const green: Phase = { phase: 'green', segment: place(1) }
  expect(verbsFor(inPhase(green))[0]?.hint).toBe('as it stops')
  expect(verbsFor(inPhase(green, { carIn: 'pitEntry' }))[0]?.hint).toBe('at the pit entry')
})
