import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBench, type AppBench, type BenchDevice } from '../app-bench.ts'
import { FoldedLogs } from './folded-logs.ts'

let bench: AppBench
let wall: BenchDevice
let captain: BenchDevice
beforeAll(async () => {
  bench = await openBench()
  captain = await bench.device('captain')
  wall = await bench.device('pitWall')
})
afterAll(() => bench.close())

const note = (meeting: string, times = 1) => {
  const entries = Array.from({ length: times }, () =>
    wall.entry({ kind: 'note.1', body: '{"words":"so"}' }),
  )
  return wall.ask(`POST /api/meetings/${meeting}/entries`, { body: { meeting, entries } })
}
const notesIn = async (logs: FoldedLogs, meeting: string) => {
  const { seq, state } = await logs.of(meeting)
  return [seq, state.record.notes.length]
}

test('a log of several pages is folded whole, and what is new is read on', async () => {
  const logs = new FoldedLogs(bench.house.deps.storage)
  const meeting = await captain.meeting()
  expect(await notesIn(logs, meeting)).toEqual([0, 0])
  // A page is 500 entries, a batch at most 64 KiB.
  for (let batch = 0; batch < 5; batch += 1) await note(meeting, 100)
  await note(meeting)
  expect(await notesIn(logs, meeting)).toEqual([501, 501])
  const before = await logs.of(meeting)
  expect(await logs.of(meeting)).toBe(before)
  await note(meeting)
  expect(await notesIn(logs, meeting)).toEqual([502, 502])
})

test('the logs asked for least lately are forgotten, and read again when they are asked for', async () => {
  const logs = new FoldedLogs(bench.house.deps.storage)
  const [first = '', second = '', ...others] = await Promise.all(
    Array.from({ length: 5 }, () => captain.meeting()),
  )
  await note(first)
  await note(second)
  const [one, two] = [await logs.of(first), await logs.of(second)]
  await logs.of(first)
  // Four are kept: the second one is the one to go.
  for (const meeting of others) await logs.of(meeting)
  expect(await logs.of(first)).toBe(one)
  const again = await logs.of(second)
  expect(again).not.toBe(two)
  expect(again).toEqual(two)
})
