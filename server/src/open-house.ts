/** Opens everything in order, store first, and closes it in the reverse. `main.ts` and tests start the same house. */
import type { AddressInfo } from 'node:net'
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { v7 as uuidV7 } from 'uuid'
import type { Names } from './access/origin.ts'
import { Tries } from './access/tries.ts'
import { addressesOf, ownAddressOf, type Listening } from './addresses.ts'
import type { App } from './app.ts'
import type { Deps, OpenDemo } from './deps.ts'
import type { Storage } from './storage/port.ts'
import { openSqlite, type SqliteOptions } from './storage/sqlite/open.ts'
import { keepTime } from './time/keep-time.ts'
import { ServerTime, SYSTEM_CLOCKS, type Clocks } from './time/server-time.ts'

export interface HouseOptions {
  readonly data: string
  readonly host: string
  readonly port: number
  /** Also listens over TLS, with an authority of its own. */
  readonly httpsPort?: number
  readonly names: Names
  readonly trustProxy?: string
  readonly web?: string
  readonly openDemo?: OpenDemo
  readonly clocks?: Clocks
  /** See WriterSettings. */
  readonly forTests?: SqliteOptions['forTests']
}

export interface House {
  readonly deps: Deps
  readonly app: App
  readonly close: () => Promise<void>
}

const FIRST_TEAM = 'Our team'

export async function openHouse(options: HouseOptions): Promise<House> {
  // The thread opens the file while this one loads the rest.
  const [opened, { buildApp }] = await Promise.all([openStore(options), import('./app.ts')])
  const { storage, time } = opened
  try {
    const found = { id: uuidV7(), name: FIRST_TEAM, nowMs: time.now() }
    const { team } = await storage.run('foundTeam', found)
    const listening: Listening = { ...options, publicUrl: options.names.publicUrl }
    const deps = await depsOf(options, { ...opened, team, listening })
    const app = await buildApp(deps)
    const doors = await openDoors(app, deps, listening)
    const keeping = keepTime({ time, storage, log: app.http.log })
    return {
      deps,
      app,
      async close() {
        keeping.stop()
        doors.close()
        await app.sockets.close()
        await app.http.close()
        await storage.close()
      },
    }
  } catch (error) {
    await storage.close()
    throw error
  }
}

interface Opened {
  readonly storage: Storage
  readonly time: ServerTime
}

async function depsOf(
  options: HouseOptions,
  opened: Opened & { readonly team: string; readonly listening: Listening },
): Promise<Deps> {
  const { listening, ...rest } = opened
  const { data, names, trustProxy, openDemo, httpsPort } = options
  return {
    ...rest,
    ...{ data, names },
    web: options.web ?? builtScreens(),
    tries: new Tries(() => opened.time.now()),
    addresses: () => addressesOf(listening),
    ownAddress: () => ownAddressOf(listening),
    ...(trustProxy !== undefined && { trustProxy }),
    ...(openDemo && { openDemo }),
    ...(httpsPort !== undefined && {
      authority: await (await import('./https/authority.ts')).openAuthority(data),
    }),
  }
}

/** Listens, and notes in `listening` the ports that were free. */
async function openDoors(
  { http, sockets }: App,
  { authority }: Deps,
  listening: Listening,
): Promise<{ readonly close: () => void }> {
  const { host, port, httpsPort } = listening
  await http.listen({ host, port })
  listening.port = (http.server.address() as AddressInfo).port
  if (!authority || httpsPort === undefined) return { close: () => undefined }
  const { listenSealed } = await import('./https/listen.ts')
  const sealed = await listenSealed({ http, sockets }, authority, { host, port: httpsPort })
  listening.httpsPort = sealed.port
  return sealed
}

async function openStore(options: HouseOptions): Promise<Opened> {
  const { data, forTests, clocks = SYSTEM_CLOCKS } = options
  const started: { time?: ServerTime } = {}
  const storage = await openSqlite({
    file: join(data, 'pitlamp.db'),
    mark: () => started.time?.kept() ?? { markMs: 0, epoch: 0 },
    ...(forTests && { forTests }),
  })
  const time = new ServerTime(clocks, await storage.read.keptTime())
  started.time = time
  await storage.run('keepTime', time.kept())
  return { storage, time }
}

/** Sources and bundle lie at different depths: the folder above this file that holds the workspaces. */
function builtScreens(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'package-lock.json')) && folder !== dirname(folder)) {
    folder = dirname(folder)
  }
  return join(folder, 'build', 'web')
}
