/**
 * The proxy of `docker-compose.yml` in this process: each request and each screen goes to whichever server comes
 * next, no matter where it was before; one that takes no connection, or is not ready, is passed over.
 */
import { createProxyServer } from 'httpxy'
import { once } from 'node:events'
import { createServer, type IncomingMessage } from 'node:http'
import { connect, type AddressInfo, type Socket } from 'node:net'
import { setTimeout as sleep } from 'node:timers/promises'

export interface Proxy {
  readonly url: string
  /** Screens that are connected through it, by the port of the server behind. */
  readonly screensAt: (port: number) => number
  readonly close: () => Promise<void>
}

const LOOK_EVERY_MS = 1_000
/** As `health_fails` of the real one: a busy machine answers late now and then. */
const FAILS = 3
const TRY_FOR_MS = 3_000
const TRY_AGAIN_AFTER_MS = 50

export async function openProxy(ports: readonly number[]): Promise<Proxy> {
  const proxy = createProxyServer({ xfwd: true })
  proxy.on('error', (_error, _request, answer) => answer?.destroy())
  const ready = watchReadiness(ports)
  const next = inTurn(ports, ready.isReady)
  const screens = new Map<Socket, number>()
  const server = createServer((request, response) => {
    const send = async () => {
      const port = await next()
      if (port === undefined) return void response.writeHead(502).end()
      await proxy.web(request, response, { target: targetAt(port) })
    }
    send().catch(() => response.destroy())
  })
  server.on('upgrade', (request: IncomingMessage, socket: Socket, head: Buffer) => {
    const send = async () => {
      const port = await next()
      if (port === undefined) return void socket.destroy()
      screens.set(socket, port)
      socket.once('close', () => screens.delete(socket))
      await proxy.ws(request, socket, { target: targetAt(port) }, head)
    }
    socket.on('error', () => undefined)
    send().catch(() => socket.destroy())
  })
  server.listen(0, '127.0.0.1')
  await once(server, 'listening')
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    screensAt: (port) => [...screens.values()].filter((at) => at === port).length,
    async close() {
      ready.stop()
      for (const socket of screens.keys()) socket.destroy()
      server.closeAllConnections()
      server.close()
      await once(server, 'close')
    },
  }
}

const targetAt = (port: number) => `http://127.0.0.1:${port}`

/** The next that takes a connection; undefined where none does for as long as a request may wait. */
function inTurn(ports: readonly number[], isReady: (port: number) => boolean) {
  let turn = 0
  return async (): Promise<number | undefined> => {
    const until = performance.now() + TRY_FOR_MS
    while (performance.now() < until) {
      for (let tried = 0; tried < ports.length; tried += 1) {
        const port = ports[turn++ % ports.length]
        if (port !== undefined && isReady(port) && (await takes(port))) return port
      }
      await sleep(TRY_AGAIN_AFTER_MS)
    }
    return undefined
  }
}

function takes(port: number): Promise<boolean> {
  const socket = connect(port, '127.0.0.1')
  return new Promise((resolve) => {
    const done = (answer: boolean) => {
      socket.destroy()
      resolve(answer)
    }
    socket.once('connect', () => done(true)).once('error', () => done(false))
  })
}

function watchReadiness(ports: readonly number[]) {
  const failed = new Map<number, number>()
  const look = async (port: number) => {
    const answer = await fetch(`${targetAt(port)}/readyz`).catch(() => undefined)
    await answer?.arrayBuffer().catch(() => undefined)
    failed.set(port, answer?.ok === true ? 0 : (failed.get(port) ?? 0) + 1)
  }
  const timer = setInterval(() => {
    for (const port of ports) void look(port)
  }, LOOK_EVERY_MS)
  const isReady = (port: number) => (failed.get(port) ?? 0) < FAILS
  return { isReady, stop: () => clearInterval(timer) }
}
