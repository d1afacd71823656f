/** What `npm run bench -- scale` compares, all over one durable PostgreSQL: a bare server, one process, and two. */
import { fork, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { v7 as uuidV7 } from 'uuid'
import { startOwnPostgres } from '../../../server/src/storage/postgres/testing-postgres.ts'
import { join as joinTeam, type Device } from '../../device.ts'
import { startServer, type RunningServer } from '../../running-server.ts'
import type { MeetingsLoad } from './meetings.ts'
import { cpuMs, lineOf } from './processes.ts'
import type { Measured } from './delays.ts'

export const WHICH = ['bare', 'one', 'two'] as const
export type Which = (typeof WHICH)[number]

type Prepared = Pick<MeetingsLoad, 'kind' | 'ports' | 'meetings' | 'devices'>
interface Target extends Prepared {
  readonly pids: readonly number[]
  readonly stop: () => Promise<void>
}

export interface Targets {
  readonly of: Readonly<Record<Which, Target>>
  readonly stop: () => Promise<void>
}

export interface Amount {
  readonly meetings: number
  readonly devices: number
}

/** Each over a database of its own in the same server. */
export async function startTargets(amount: Amount): Promise<Targets> {
  const postgres = await startOwnPostgres({ durable: true })
  const one = await startPitlamps(await postgres.database(), { ...amount, processes: 1 })
  const two = await startPitlamps(await postgres.database(), { ...amount, processes: 2 })
  const of = { one, two, bare: await startBarePostgres(await postgres.database(), one) }
  return {
    of,
    async stop() {
      for (const which of WHICH) await of[which].stop()
      await postgres.stop()
    },
  }
}

async function startPitlamps(
  database: string,
  { meetings, devices, processes }: Amount & { readonly processes: number },
): Promise<Target> {
  const servers: RunningServer[] = []
  const args = ['--database', database]
  for (let index = 0; index < processes; index += 1) servers.push(await startServer({ args }))
  const [first] = servers
  if (!first) throw new Error('There has to be a process.')
  const captain = await joinTeam(first.url, await first.captainCode(), 'Device 1')
  const team: Device[] = [captain]
  while (team.length < devices) team.push(await captain.invite('pitWall', 'A device'))
  const made: string[] = []
  while (made.length < meetings) {
    const id = uuidV7()
    await captain.call('POST', '/api/meetings', { id, name: 'Bench' })
    made.push(id)
  }
  return {
    kind: 'pitlamp',
    ports: servers.map(({ port }) => port),
    pids: servers.map(({ pid }) => pid),
    meetings: made,
    devices: team.map(({ id, headers }) => ({ id, cookie: headers.cookie ?? '' })),
    async stop() {
      for (const server of servers) await server.stop()
    },
  }
}

async function startBarePostgres(database: string, like: Target): Promise<Target> {
  const program = join(import.meta.dirname, 'bare-postgres.ts')
  const server = spawn(process.execPath, ['--import', 'tsx', program, database], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const { port } = JSON.parse(await lineOf(server)) as { port: number }
  return {
    ...like,
    ...{ kind: 'bare', ports: [port], pids: [server.pid ?? 0] },
    async stop() {
      server.kill()
      await once(server, 'exit')
    },
  }
}

export interface Run extends Measured {
  /** Of the servers, the database not counted: their heartbeats to all the screens included. */
  readonly cpuMicrosecondsAnEntry: number
}

export async function underMeetings(
  target: Target,
  more: Pick<MeetingsLoad, 'firstN' | 'pressesASecond' | 'seconds'> & { meetings: number },
): Promise<Run> {
  const { kind, ports, devices, pids } = target
  const meetings = target.meetings.slice(0, more.meetings)
  const load: MeetingsLoad = { ...more, ...{ kind, ports, devices, meetings } }
  const generator = fork(join(import.meta.dirname, 'meetings.ts'), [JSON.stringify(load)], {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  })
  const spentUntilNow = () => pids.reduce((sum, pid) => sum + cpuMs(pid), 0)
  let before = 0
  let spent = 0
  generator.on('message', (said) => {
    if (said === 'pressing') before = spentUntilNow()
    if (said === 'pressed') spent = spentUntilNow() - before
  })
  const measured = JSON.parse(await lineOf(generator)) as Measured
  if (measured.deliveries < measured.expected) {
    throw new Error(`${measured.expected - measured.deliveries} deliveries never came.`)
  }
  return { ...measured, cpuMicrosecondsAnEntry: (spent * 1000) / measured.presses }
}
