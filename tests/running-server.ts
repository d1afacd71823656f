/**
 * The real server as a process of its own: the built bundle where there is one, else the sources. It
 * listens on a free port of the loopback and keeps its data in a folder that is gone after `stop`,
 * unless the test brings its own. What is still running when the tests end is ended with them.
 */
import { execFile, spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync, readFileSync, realpathSync, rmSync, statSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { promisify } from 'node:util'

const root = join(import.meta.dirname, '..')
const READY_WITHIN_MS = 30_000
const CODE_WITHIN_MS = 5_000
const STOPPED_WITHIN_MS = 10_000

export interface ServerOptions {
  /** A data folder of the test's own; without it one is made, and removed by `stop`. */
  readonly data?: string
  /** Further options as on the command line. */
  readonly args?: readonly string[]
  readonly env?: Readonly<Record<string, string>>
  /** Loaded before the server: `….so` by the linker, anything else by Node. */
  readonly preload?: readonly string[]
  /** The port it had before, so that screens find it again. */
  readonly port?: number
  /** Arguments to Node that start another program than the one a team runs. */
  readonly program?: readonly string[] | undefined
}

export interface RunningServer {
  readonly url: string
  readonly port: number
  readonly data: string
  readonly pid: number
  /** What a captain's first device joins with, as the start wrote it down. */
  readonly captainCode: () => Promise<string>
  /** Ends it as Ctrl-C does, and removes the data folder if it was made here, for this or an earlier run. */
  readonly stop: () => Promise<void>
  /** The same, but the data folder stays. */
  readonly end: () => Promise<void>
  /** Ends it at once, wherever it is. The data folder stays. */
  readonly kill: () => Promise<void>
  /** Everything it has printed. */
  readonly log: () => string
}

const running = new Set<ChildProcess>()
const made = new Set<string>()
process.on('exit', () => {
  for (const server of running) server.kill('SIGKILL')
  for (const data of made) rmSync(data, { recursive: true, force: true })
})

/** @throws where it ends before it is ready; what it printed is in the message */
export async function startServer(options: ServerOptions = {}): Promise<RunningServer> {
  const data = realpathSync(options.data ?? newFolder())
  const port = options.port ?? (await freePort())
  const url = `http://127.0.0.1:${port}`
  const server = launch(options, { data, port })
  let printed = ''
  server.stdout?.on('data', (bytes: Buffer) => (printed += bytes.toString()))
  server.stderr?.on('data', (bytes: Buffer) => (printed += bytes.toString()))
  const ended = once(server, 'close').then(() => running.delete(server))
  await ready(url, server).catch(async (error: unknown) => {
    server.kill('SIGKILL')
    await ended
    throw new Error(`${String(error)}\n${printed}`)
  })
  const end = async (signal: 'SIGTERM' | 'SIGKILL') => {
    server.kill(signal)
    const late = setTimeout(() => server.kill('SIGKILL'), STOPPED_WITHIN_MS)
    await ended
    clearTimeout(late)
  }
  return {
    url,
    port,
    data,
    pid: server.pid ?? 0,
    captainCode: () => captainCodeIn(data),
    stop: async () => {
      await end('SIGTERM')
      if (made.delete(data)) rmSync(data, { recursive: true })
    },
    end: () => end('SIGTERM'),
    kill: () => end('SIGKILL'),
    log: () => printed,
  }
}

/** A command of the operator's, such as `backup FILE`. @returns what it printed @throws where it ends otherwise than with 0 */
export async function serverCommand(...words: readonly string[]): Promise<string> {
  const run = promisify(execFile)
  const { stdout } = await run(process.execPath, [...serverProgram(), ...words], { cwd: root })
  return stdout
}

function newFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'pitlamp-')))
  made.add(folder)
  return folder
}

function launch(options: ServerOptions, at: { data: string; port: number }): ChildProcess {
  const { args = [], env = {}, preload = [], program = serverProgram() } = options
  const native = preload.filter((file) => file.endsWith('.so'))
  const modules = preload.filter((file) => !file.endsWith('.so'))
  const where = ['--host', '127.0.0.1', '--port', String(at.port), '--data', at.data]
  const server = spawn(
    process.execPath,
    [...modules.flatMap((file) => ['--import', file]), ...program, ...where, ...args],
    {
      cwd: root,
      env: { ...process.env, ...(native.length > 0 && { LD_PRELOAD: native.join(':') }), ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  )
  running.add(server)
  return server
}

export function serverProgram(): readonly string[] {
  const bundle = join(root, 'build', 'server', 'main.js')
  // As `npm start` does.
  return existsSync(bundle)
    ? ['--v8-pool-size=1', bundle]
    : ['--import', 'tsx', join(root, 'server/src/main.ts')]
}

async function ready(url: string, server: ChildProcess): Promise<void> {
  const until = performance.now() + READY_WITHIN_MS
  while (performance.now() < until) {
    if (server.exitCode !== null) throw new Error(`The server ended with code ${server.exitCode}.`)
    const answer = await fetch(`${url}/readyz`).catch(() => undefined)
    await answer?.arrayBuffer()
    if (answer?.ok) return
    await sleep(20)
  }
  throw new Error(`The server was not ready within ${READY_WITHIN_MS / 1000} s.`)
}

/** Below the ports the system gives to outgoing connections, so that none takes it during a restart. */
async function freePort(): Promise<number> {
  for (;;) {
    const port = 20_000 + Math.floor(Math.random() * 12_000)
    const probe = createServer()
    const free = await new Promise<boolean>((resolve) => {
      probe.once('error', () => resolve(false)).listen(port, '127.0.0.1', () => resolve(true))
    })
    probe.close()
    if (free) return port
  }
}

/** It is written down after the server is ready, and for its owner only. */
async function captainCodeIn(data: string): Promise<string> {
  const file = join(data, 'captain-code')
  const until = performance.now() + CODE_WITHIN_MS
  while (!existsSync(file) || statSync(file).size === 0) {
    if (performance.now() > until)
      throw new Error(`There is no ${file}: is there a captain already?`)
    await sleep(10)
  }
  const mode = statSync(file).mode & 0o777
  if (mode !== 0o600) throw new Error(`${file} can be read by others: ${mode.toString(8)}`)
  return readFileSync(file, 'utf8').trim()
}
