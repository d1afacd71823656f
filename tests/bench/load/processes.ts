/** The two servers under load, and the generator, as processes: started, measured, ended. */
import { fork, spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { v7 as uuidV7 } from 'uuid'
import { join as joinTeam } from '../../device.ts'
import { startServer } from '../../running-server.ts'
import type { Target } from './line.ts'
import type { Measured } from './delays.ts'
import type { Load } from './screens.ts'

export interface Server {
  readonly pid: number
  readonly target: Target
  readonly device: string
  readonly stop: () => Promise<void>
}

export async function startPitlamp(): Promise<Server> {
  const server = await startServer()
  const wall = await joinTeam(server.url, await server.captainCode(), 'Wall of the bench')
  const meeting = uuidV7()
  await wall.call('POST', '/api/meetings', { id: meeting, name: 'Bench' })
  const target = { kind: 'pitlamp', port: server.port, cookie: wall.headers.cookie ?? '', meeting }
  return {
    pid: server.pid,
    target: target as Target,
    device: wall.id,
    stop: server.stop,
  }
}

export async function startBare(): Promise<Server> {
  const folder = mkdtempSync(join(tmpdir(), 'pitlamp-bare-'))
  const program = join(import.meta.dirname, 'bare-server.ts')
  const server = spawn(process.execPath, ['--import', 'tsx', program, join(folder, 'bare.db')], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const { port } = JSON.parse(await lineOf(server)) as { port: number }
  return {
    pid: server.pid ?? 0,
    target: { kind: 'bare', port },
    device: uuidV7(),
    async stop() {
      server.kill()
      await once(server, 'exit')
      rmSync(folder, { recursive: true })
    },
  }
}

export interface Run extends Measured {
  readonly cpuMicrosecondsADelivery: number
}

/** The server's processor time is counted between the first press and the last delivery. */
export async function underLoad(
  server: Server,
  load: Omit<Load, 'target' | 'device'>,
): Promise<Run> {
  const whole: Load = { ...load, target: server.target, device: server.device }
  const generator = fork(join(import.meta.dirname, 'screens.ts'), [JSON.stringify(whole)], {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  })
  let before = 0
  let spent = 0
  generator.on('message', (said) => {
    if (said === 'pressing') before = cpuMs(server.pid)
    if (said === 'pressed') spent = cpuMs(server.pid) - before
  })
  const measured = JSON.parse(await lineOf(generator)) as Measured
  if (measured.deliveries < measured.expected) {
    throw new Error(`${measured.expected - measured.deliveries} deliveries never came.`)
  }
  return { ...measured, cpuMicrosecondsADelivery: (spent * 1000) / measured.deliveries }
}

export async function lineOf(child: ChildProcess): Promise<string> {
  let text = ''
  for await (const part of child.stdout ?? []) {
    text += String(part)
    if (text.includes('\n')) return text
  }
  throw new Error('It ended without a word.')
}

const TICK_MS = 10

/** User and system time of all threads, from /proc (proc(5), fields 14 and 15, in ticks of 10 ms). */
export function cpuMs(pid: number): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8')
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ')
  return (Number(fields[11]) + Number(fields[12])) * TICK_MS
}
