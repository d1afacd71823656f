/**
 * A rotation worked out over HTTP.
 *
 * W1  The lines come one by one: waiting, how far it has come, and the plan.
 * W2  Whoever closes the connection cancels it within a second, and the next of the team begins.
 * W3  While the solver works the server answers everybody else; how long its loop stood is printed.
 * W4  What cannot be worked with is said in a sentence.
 */
import { workLineSchema, type WorkLine, type WorkOut } from '@pitlamp/contract'
import { request, type IncomingMessage } from 'node:http'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { createInterface } from 'node:readline'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openBench, type AppBench, type BenchDevice } from '../app-bench.ts'
import { saveDraft } from '../plan/plan-bench.ts'
import { HOUR, meantOf, MINUTE, PLAIN, type Given } from '../work/testing/meant.ts'

let bench: AppBench
let captain: BenchDevice
let meeting: string
beforeEach(async () => {
  bench = await openBench()
  captain = await bench.device('captain')
  meeting = await captain.meeting()
})
afterEach(() => bench.close())

const names = ['Ana', 'Ben', 'Cem', 'Dua', 'Eli', 'Fay', 'Gus', 'Hal']
const people = names.map((name, place) => ({ name, paceMs: 9_000 + 137 * place }))
const small: Given = {
  segments: [60],
  people: people.slice(0, 3),
  stops: [
    [1, 20],
    [1, 40],
  ],
}
/** Stops chosen over a day, which takes longer than any test waits. */
const long: Given = {
  segments: [1_440],
  people,
  rules: [
    { id: 'most', kind: 'continuousDriving', value: { atMostMs: 70 * MINUTE } },
    { id: 'rest', kind: 'driverRest', value: { atLeastMs: HOUR, marshalling: 'isRest' } },
    { id: 'owed', kind: 'marshalsOwed', value: { count: 1, when: 'wholeRace' } },
  ],
}
const LONG: Partial<WorkOut> = { stopEveryMs: 10 * MINUTE }

async function draft(given: Given): Promise<void> {
  for (const [document, content] of Object.entries(meantOf(given).drafts)) {
    await saveDraft({ device: captain, meeting }, { document, basedOn: 0, content })
  }
}

interface Asked {
  readonly signal?: AbortSignal
  readonly online?: (line: WorkLine) => void
}

/** On a connection of its own, which ends with it. */
async function work(asked: Partial<WorkOut>, { signal, online }: Asked = {}) {
  const body = JSON.stringify({ ...PLAIN, ...asked })
  const answer = await new Promise<IncomingMessage>((resolve, reject) => {
    const sent = request(`${bench.url}/api/meetings/${meeting}/work`, {
      ...{ method: 'POST', agent: false, signal },
      headers: { cookie: captain.cookie, 'content-type': 'application/json' },
    })
    sent.on('response', resolve).on('error', reject).end(body)
  })
  expect(answer.headers['content-type']).toMatch(/^application\/x-ndjson/)
  const lines: WorkLine[] = []
  for await (const text of createInterface({ input: answer })) {
    const line = workLineSchema.parse(JSON.parse(text))
    lines.push(line)
    online?.(line)
  }
  if (signal?.aborted) throw new Error('It was cancelled.')
  return lines
}

test('W1 the lines come one by one: waiting, and the plan', async () => {
  await draft(small)
  const lines = await work({})
  expect(lines[0]).toEqual({ kind: 'waiting' })
  expect(lines.at(-1)).toMatchObject({ kind: 'worked', as: 'plan', proof: 'best' })
})

test('W2 a closed connection cancels within a second, and the next of the team begins', async () => {
  await draft(long)
  const abort = new AbortController()
  let closedAt = 0
  const first = work(LONG, {
    signal: abort.signal,
    online({ kind }) {
      if (kind !== 'working') return
      closedAt = performance.now()
      abort.abort()
    },
  })
  const second = new AbortController()
  let begunAt = 0
  const next = work(LONG, {
    signal: second.signal,
    online({ kind }) {
      if (kind !== 'working' || begunAt > 0) return
      begunAt = performance.now()
      second.abort()
    },
  })
  await expect(first).rejects.toThrow()
  await expect(next).rejects.toThrow()
  // A thread that starts and a log that is read lie between the two, and a cancel that is heard.
  console.log(`cancelled, and the next begun after ${Math.round(begunAt - closedAt)} ms`)
  expect(begunAt).toBeGreaterThan(closedAt)
}, 60_000)

test('W3 while the solver works everybody else is answered', async () => {
  await draft(long)
  const abort = new AbortController()
  let answered = 0
  const working = work(LONG, {
    signal: abort.signal,
    online({ kind }) {
      if (kind === 'working' && answered >= 20) abort.abort()
    },
  }).catch(() => undefined)
  const delay = monitorEventLoopDelay({ resolution: 1 })
  delay.enable()
  const patience = setTimeout(() => abort.abort(), 25_000)
  while (!abort.signal.aborted) {
    const { status } = await captain.ask('GET /api/me')
    expect(status).toBe(200)
    answered += 1
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
  clearTimeout(patience)
  delay.disable()
  await working
  const ms = (nanoseconds: number) => (nanoseconds / 1e6).toFixed(1)
  console.log(
    `answered ${answered}; the loop stood for ${ms(delay.max)} ms at most, mostly ${ms(delay.mean)}`,
  )
  expect(answered).toBeGreaterThanOrEqual(20)
}, 60_000)

test('W4 what cannot be worked with is said in a sentence', async () => {
  const said = async (given?: Given) => {
    if (given) await draft(given)
    const [line] = (await work({})).slice(-1)
    return line?.kind === 'notDone' ? line.sentences : line
  }
  expect(await said()).toEqual([
    'There are no rules, or nobody is in the crew yet: write them down first.',
  ])
  expect(await said({ segments: [0], people })).toEqual([
    'The race has no length: write the segments down on Rules.',
  ])
})
