/**
 * A cold start: from `node` to the first answer that the server is ready, on a store that exists, and what it
 * holds in memory when nobody does anything. The baseline is a Node that answers with `node:http` and nothing else.
 */
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { serverProgram } from '../running-server.ts'
import { median, rounded, type Row } from './row.ts'

const RUNS = 5
const IDLE_AFTER_MS = 2_000
const READY_GOAL_MS = 500
const MEMORY_GOAL_MB = 130
const PORT = 19_417

const BARE = `require('node:http').createServer((_, answer) => answer.end()).listen(${PORT}, '127.0.0.1')`

interface Start {
  readonly readyMs: number
  readonly memoryMb: number
}

export async function bench(): Promise<readonly Row[]> {
  const data = mkdtempSync(join(tmpdir(), 'pitlamp-start-'))
  const where = ['--host', '127.0.0.1', '--port', String(PORT), '--data', data]
  const ours = [...serverProgram(), ...where]
  await start(ours)
  const [starts, bare]: [Start[], Start[]] = [[], []]
  for (let run = 0; run < RUNS; run += 1) {
    starts.push(await start(ours))
    bare.push(await start(['-e', BARE]))
  }
  rmSync(data, { recursive: true })
  const row = (of: keyof Start, told: Pick<Row, 'figure' | 'unit'>, goal: number): Row => {
    const [value, baseline] = [
      median(starts.map((one) => one[of])),
      median(bare.map((one) => one[of])),
    ]
    return {
      ...told,
      value: rounded(value),
      baseline: rounded(baseline),
      ratio: rounded(value / baseline),
      goal: `at most ${goal}`,
      met: value <= goal,
    }
  }
  const ready = 'node to the first /readyz 200 (baseline: a bare node:http answers)'
  return [
    row('readyMs', { figure: ready, unit: 'ms' }, READY_GOAL_MS),
    row(
      'memoryMb',
      { figure: 'idle memory (baseline: bare node:http)', unit: 'MB' },
      MEMORY_GOAL_MB,
    ),
  ]
}

async function start(args: readonly string[]): Promise<Start> {
  const startedAt = performance.now()
  const server = spawn(process.execPath, args, { stdio: 'ignore' })
  while (!(await answers())) await sleep(2)
  const readyMs = performance.now() - startedAt
  await sleep(IDLE_AFTER_MS)
  const status = readFileSync(`/proc/${server.pid}/status`, 'utf8')
  const memoryMb = Number(/VmRSS:\s+(\d+)/.exec(status)?.[1]) / 1024
  server.kill()
  await once(server, 'exit')
  return { readyMs, memoryMb }
}

async function answers(): Promise<boolean> {
  const answer = await fetch(`http://127.0.0.1:${PORT}/readyz`).catch(() => undefined)
  await answer?.arrayBuffer()
  return answer?.ok === true
}
