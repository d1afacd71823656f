/** The real house on a free port of this machine, for the tests beside the code, and devices that speak to it. */
import type { Me, Problem, ScreenToServer, ServerToScreen } from '@pitlamp/contract'
import type { Entry, Role } from '@pitlamp/race'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { io, type Socket } from 'socket.io-client'
import { v7 as uuidV7 } from 'uuid'
import { openHouse, type House, type HouseOptions } from './open-house.ts'
import { anEntry } from './storage/contract-bench.ts'

export interface Answered<T = unknown> {
  readonly status: number
  readonly type: string
  readonly body: T
  readonly headers: Headers
}

export interface AppBench {
  readonly house: House
  readonly url: string
  readonly ask: (request: string, more?: Ask) => Promise<Answered>
  /** A device that joined with this role, the first team or the one of this name. */
  readonly device: (role: Role, teamName?: string) => Promise<BenchDevice>
  /** Closes the house and opens it again on the same data. */
  readonly restart: (more?: Partial<HouseOptions>) => Promise<void>
  readonly close: () => Promise<void>
}

export interface Ask {
  readonly body?: unknown
  readonly headers?: Readonly<Record<string, string>>
}

export type BenchSocket = Socket<ServerToScreen, ScreenToServer>

export interface BenchDevice {
  readonly id: string
  readonly team: string
  readonly cookie: string
  readonly ask: AppBench['ask']
  readonly socket: () => BenchSocket
  /** The next entry of this device. */
  readonly entry: (given?: Partial<Entry>) => Entry
  readonly meeting: () => Promise<string>
}

export async function openBench(options: Partial<HouseOptions> = {}): Promise<AppBench> {
  const data = mkdtempSync(join(tmpdir(), 'pitlamp-'))
  const open = (more: Partial<HouseOptions>) =>
    openHouse({ data, host: '127.0.0.1', port: 0, names: {}, ...options, ...more })
  let house = await open({})
  const sockets: BenchSocket[] = []
  const ask: AppBench['ask'] = (request, more) => send(house.deps.ownAddress(), request, more)
  return {
    get house() {
      return house
    },
    get url() {
      return house.deps.ownAddress()
    },
    ask,
    async device(role, teamName) {
      const id = uuidV7()
      const { cookie, team } = await joinAs(house, ask, { role, id, teamName })
      const asIt: AppBench['ask'] = (request, more) =>
        ask(request, { ...more, headers: { cookie, ...more?.headers } })
      let n = 0
      return {
        ...{ id, cookie, team },
        ask: asIt,
        socket() {
          const socket: BenchSocket = io(house.deps.ownAddress(), {
            transports: ['websocket'],
            extraHeaders: { cookie },
            reconnection: false,
            forceNew: true,
          })
          sockets.push(socket)
          return socket
        },
        entry: (given) => anEntry({ device: id, n: ++n, ...given }),
        async meeting() {
          const made = await asIt('POST /api/meetings', {
            body: { id: uuidV7(), name: 'A meeting' },
          })
          return (made.body as { id: string }).id
        },
      }
    },
    async restart(more = {}) {
      await house.close()
      house = await open(more)
    },
    async close() {
      for (const socket of sockets) socket.close()
      await house.close()
      rmSync(data, { recursive: true })
    },
  }
}

async function joinAs(
  { deps }: House,
  ask: AppBench['ask'],
  { role, id, teamName }: { role: Role; id: string; teamName: string | undefined },
): Promise<{ readonly cookie: string; readonly team: string }> {
  const ticket = { simulator: false, onlyWithoutCaptain: false }
  const code = await deps.tickets.write({ ...ticket, ...(teamName !== undefined && { teamName }) })
  const name = `A ${role}’s device`
  const joined = await ask('POST /api/join', { body: { code, device: id, name } })
  const cookie = joined.headers
    .getSetCookie()
    .map((line) => line.split(';')[0] ?? '')
    .join('; ')
  const team = (joined.body as Me).team.id
  if (role !== 'captain') {
    await deps.storage.run('changeDevice', {
      team,
      device: id,
      change: { role },
      nowMs: 0,
    })
  }
  return { cookie, team }
}

/** `request` is method and path. */
async function send(url: string, request: string, { body, headers }: Ask = {}): Promise<Answered> {
  const [method = '', path = ''] = request.split(' ')
  const answer = await fetch(url + path, {
    method,
    headers: { ...(body !== undefined && { 'content-type': 'application/json' }), ...headers },
    ...(body !== undefined && { body: typeof body === 'string' ? body : JSON.stringify(body) }),
  })
  const text = await answer.text()
  const type = answer.headers.get('content-type') ?? ''
  const parsed: unknown = /[/+]json/.test(type) ? JSON.parse(text) : text
  return { status: answer.status, type, body: parsed, headers: answer.headers }
}

/** Status and refusal of a problem, and that it is one as RFC 9457 has it. */
export function refusalOf({ status, type, body }: Answered): string {
  const { refusal, title, type: urn } = body as Problem
  const whole =
    /^application\/problem\+json/.test(type) && urn === `urn:pitlamp:${refusal}` && title !== ''
  return whole ? `${String(status)} ${refusal}` : `no problem: ${String(status)} ${type}`
}
