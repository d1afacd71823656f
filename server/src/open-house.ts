/** Opens everything in order, store first, and closes it in the reverse. `main.ts` and tests start the same house. */
import type { AddressInfo } from 'node:net'
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { v7 as uuidV7 } from 'uuid'
import type { Names } from './access/origin.ts'
import { SharedTries } from './access/shared-tries.ts'
import { ticketBox } from './access/ticket-box.ts'
import { Tries } from './access/tries.ts'
import { addressesOf, ownAddressOf, type Listening } from './addresses.ts'
import type { App } from './app.ts'
import type { Deps, OpenDemo } from './deps.ts'
import { USUAL_LOG, type LogSettings } from './logging.ts'
import { openStore, type OpenedStore, type StoreOptions } from './open-store.ts'
import { keepTime } from './time/keep-time.ts'
import { shareTime } from './time/share-time.ts'

export interface HouseOptions extends StoreOptions {
  readonly host: string
  readonly port: number
  /** Also listens over TLS, with an authority of its own. */
  readonly httpsPort?: number
  readonly names: Names
  readonly trustProxy?: string
  /** Whoever brings it may read `/metrics`. */
  readonly metricsToken?: string
  readonly log?: LogSettings
  readonly web?: string
  readonly openDemo?: OpenDemo
}

export interface House {
  readonly deps: Deps
  readonly app: App
  readonly close: () => Promise<void>
}

/** What was asked before a stop is answered; a browser's connection that asks nothing does not hold it up. */
const LINGERING_MS = 1_000
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
    const keeping = keepClock(opened, app)
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

function keepClock({ time, storage }: OpenedStore, { http, sockets }: App) {
  const { neighbours } = storage
  const { tellClock } = sockets
  if (!neighbours) return keepTime({ time, storage, log: http.log })
  return shareTime({ time, storage, neighbours, log: http.log, tellClock })
}

async function depsOf(
  options: HouseOptions,
  opened: OpenedStore & { readonly team: string; readonly listening: Listening },
): Promise<Deps> {
  const { listening, ...rest } = opened
  const { storage, time } = opened
  const now = () => time.now()
  const { data, names, trustProxy, openDemo, httpsPort, metricsToken } = options
  return {
    ...rest,
    ...{ data, names },
    web: options.web ?? builtScreens(),
    log: options.log ?? USUAL_LOG,
    tries: storage.neighbours ? new SharedTries(storage, now) : new Tries(now),
    tickets: ticketBox({ storage, time, data }),
    addresses: () => addressesOf(listening),
    ownAddress: () => ownAddressOf(listening),
    ...(trustProxy !== undefined && { trustProxy }),
    ...(openDemo && { openDemo }),
    ...(metricsToken !== undefined && {
      measured: {
        metrics: (await import('./metrics/prometheus.ts')).measure(),
        token: metricsToken,
      },
    }),
    ...(httpsPort !== undefined && {
      authority: await (await import('./https/authority.ts')).openAuthority(data),
    }),
  }
}

/**
 * Listens, and notes in `listening` the ports that were free. Closed are the doors before screens are sent away: none
 * comes back to a process that is going, but all to whichever stands beside it.
 */
async function openDoors(
  { http, sockets }: Pick<App, 'http' | 'sockets'>,
  { authority }: Deps,
  listening: Listening,
): Promise<{ readonly close: () => void }> {
  const { host, port, httpsPort } = listening
  await http.listen({ host, port })
  listening.port = (http.server.address() as AddressInfo).port
  const close = () => {
    http.server.close()
    setTimeout(() => http.server.closeAllConnections(), LINGERING_MS).unref()
  }
  if (!authority || httpsPort === undefined) return { close }
  const { listenSealed } = await import('./https/listen.ts')
  const sealed = await listenSealed({ http, sockets }, authority, { host, port: httpsPort })
  listening.httpsPort = sealed.port
  return {
    close() {
      close()
      sealed.close()
    },
  }
}

/** Sources and bundle lie at different depths: the folder above this file that holds the workspaces. */
function builtScreens(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  while (!existsSync(join(folder, 'package-lock.json')) && folder !== dirname(folder)) {
    folder = dirname(folder)
  }
  return join(folder, 'build', 'web')
}
