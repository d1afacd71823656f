import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { recordedEntrySchema, type RecordedEntry } from '../../entry/envelope.ts'
import { kinds } from '../../entry/kinds/index.ts'
import { DOCUMENTS } from '../../entry/kinds/record.ts'
import { isUnread, readEntry } from '../../entry/read.ts'
import { fold } from '../../fold/fold.ts'
import { lanesOf } from '../../time/lanes.ts'
import { planInForce } from '../../time/plan-in-force.ts'

type Golden = Omit<RecordedEntry, 'body'> & { readonly body: unknown }

const logs = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith('.json'))
  .map((file) => [file, read(file)] as const)

function read(file: string): readonly RecordedEntry[] {
  const text = readFileSync(join(import.meta.dirname, file), 'utf8')
  return (JSON.parse(text) as readonly Golden[]).map((entry) => ({
    ...entry,
    body: JSON.stringify(entry.body),
  }))
}

describe.each(logs)('%s', (_file, entries) => {
  test('is read whole by this build', () => {
    const unread = entries.map(readEntry).filter(isUnread)
    expect(unread.map(({ kind, why }) => [kind, why])).toEqual([])
  })

  test('has envelopes as they cross the wire', () => {
    for (const entry of entries) expect(recordedEntrySchema.safeParse(entry).error).toBeUndefined()
  })

  test('folds without a problem', () => {
    expect(fold(entries.map(readEntry)).problems).toEqual([])
  })
})

test('every kind of this build is in a golden log', () => {
  const recorded = new Set(logs.flatMap(([, entries]) => entries.map((entry) => entry.kind)))
  expect(Object.keys(kinds).filter((kind) => !recorded.has(kind))).toEqual([])
})

test('every document is in a golden log', () => {
  const state = fold(logs.flatMap(([, entries]) => entries).map(readEntry))
  expect(DOCUMENTS.filter((name) => state.documents[name].length === 0)).toEqual([])
})

test('what a whole race added to shape 1 says what it said when it was released', () => {
  const state = fold(read('shape-1-race.json').map(readEntry))
  const [call] = state.people.calls
  expect(call?.body.dueAt).toBe(1_800_086_400_000 + 900_000)
  // Twenty minutes and five more.
  const toMs = planInForce(state, 1_800_087_500_000)?.spans.map((span) => span.toMs)
  expect(toMs).toEqual([1_500_000, 2_400_000])
  expect(state.documents.car[0]?.content.betweenWork).toEqual(['Weigh', 'Wipe tyres'])
  expect(state.documents.plan[0]?.content.captain).toMatchObject({
    ...{ alertsMs: [300_000, 60_000, 0], callRepeatMs: 20_000, callPassOnMs: 60_000 },
    protestMs: 1_800_000,
  })
})

test('what fixed lanes added to shape 1 says what it said when it was released', () => {
  const state = fold(read('shape-1-lanes.json').map(readEntry))
  // From lane 3 of four, odd up, even down: 3, then one sat out, then 4; drawn anew from the second segment on.
  expect([...lanesOf(state, 1_800_086_400_000)]).toEqual([
    ['one', { lane: 3, colour: 'green' }],
    ['two', 'sitOut'],
    ['three', { lane: 2, colour: 'white' }],
  ])
  // Marshalling at the post of lane 3, whatever the plan called it; nobody drives in the sit-out.
  expect(planInForce(state, 1_800_086_400_000)?.spans).toMatchObject([
    { id: 's1' },
    { id: 'm1', post: '3' },
  ])
  expect(state.people.duties.map(({ duty, post }) => [duty, post])).toEqual([
    ['controller', undefined],
    ['post', '3'],
  ])
  expect(state.documents.crew[0]?.content.people[0]?.restBlock?.atLeastMs).toBe(600_000)
})

test('shape 1 says what it said when it was released', () => {
  const state = fold(read('shape-1.json').map(readEntry))
  const minutes = (at: number | undefined) => ((at ?? NaN) - 1_800_086_400_000) / 60_000
  const [run] = state.raceControl.runs
  // Green; 1:59 gone when read at 2:00; a call of half a minute; a red flag at 33:00: 32:29 on the clock.
  expect(run?.knots.map((knot) => [minutes(knot.at), knot.clockMs, knot.rate])).toEqual([
    [0, 0, 1],
    [2, 119_000, 1],
    [10, 599_000, 0],
    [10.5, 599_000, 1],
    [33, 1_949_000, 0],
  ])
  expect(minutes(run?.endAt)).toBe(38)
  expect(state.car.stops).toMatchObject([{ planned: 'p1', segment: 'one' }])
  expect(state.car.faults.map(({ fault, ended }) => [fault, ended?.how])).toEqual([
    ['Braid', 'mended'],
    ['Rear tyre', 'left'],
  ])
  expect(
    state.raceControl.penalties.map((one) => [minutes(one.servedAt), minutes(one.withdrawnAt)]),
  ).toEqual([
    [27, NaN],
    [NaN, 29],
  ])
  expect(state.record.notes[0]).toMatchObject({
    body: { words: 'Marbles on the outside of turn 4.' },
  })
})
