/** The topology of `docker-compose.yml`, made of processes: two servers over one PostgreSQL, and the proxy before them. */
import {
  startOwnPostgres,
  type OwnPostgres,
} from '../../server/src/storage/postgres/testing-postgres.ts'
import { join, type Device } from '../device.ts'
import { startServer, type RunningServer } from '../running-server.ts'
import { openProxy, type Proxy } from './proxy.ts'

export interface Topology {
  readonly proxy: Proxy
  readonly servers: readonly RunningServer[]
  readonly captain: Device
  /** Ends one as a power cut would. */
  readonly kill: (index: number) => Promise<void>
  /** Starts it again where it was, from another program where one is named. */
  readonly start: (index: number, program?: readonly string[]) => Promise<void>
  /** Ends one as an operator does who replaces it. */
  readonly end: (index: number) => Promise<void>
  readonly stop: () => Promise<void>
}

export interface TopologyOptions {
  readonly processes: number
  /** What the servers run at first. */
  readonly program?: readonly string[]
}

export async function startTopology(options: TopologyOptions): Promise<Topology> {
  const postgres = await startOwnPostgres()
  try {
    return await over(postgres, options)
  } catch (error) {
    await postgres.stop()
    throw error
  }
}

async function over(
  postgres: OwnPostgres,
  { processes, program }: TopologyOptions,
): Promise<Topology> {
  const database = await postgres.database()
  const args = ['--database', database, '--trust-proxy']
  const servers: RunningServer[] = []
  for (let index = 0; index < processes; index += 1) {
    servers.push(await startServer({ args, program }))
  }
  const proxy = await openProxy(servers.map(({ port }) => port))
  const [first] = servers
  if (!first) throw new Error('There has to be a process.')
  const captain = await join(proxy.url, await first.captainCode(), 'Device 1')
  const at = (index: number) => {
    const server = servers[index]
    if (!server) throw new Error(`There is no process ${index}.`)
    return server
  }
  return {
    ...{ proxy, servers, captain },
    kill: (index) => at(index).kill(),
    end: (index) => at(index).end(),
    async start(index, other) {
      const { data, port } = at(index)
      servers[index] = await startServer({ args, data, port, program: other ?? program })
    },
    async stop() {
      await proxy.close()
      await Promise.all(servers.map((server) => server.stop()))
      await postgres.stop()
    },
  }
}
