/**
 * The live line to every screen. A screen says hello, is told where the log stands and gets what comes after;
 * it appends, probes the clock, and hears who else is there. What it may do is read anew for every append.
 */
import {
  problem,
  type Answer,
  type Device,
  type DeviceReport,
  type Refusal,
  type RoleSaid,
  type ScreenToServer,
  type ServerToScreen,
} from '@pitlamp/contract'
import type { FastifyBaseLogger } from 'fastify'
import type { Server as HttpServer } from 'node:http'
import type { Server as HttpsServer } from 'node:https'
import { Server, type Socket as AnySocket } from 'socket.io'
import { DEVICE_COOKIE, holderOf, refusalFor } from '../access/guard.ts'
import { isOurs } from '../access/origin.ts'
import type { Deps } from '../deps.ts'
import type { Holder } from '../storage/reads/access.ts'
import { closeClogged } from './clogged.ts'
import { cookieIn } from './cookie.ts'
import { onAppend, onHello, onProbe, onReport } from './events.ts'
import { LogNews } from './log-news.ts'
import { Presence } from './presence.ts'
import { allowance } from './allowance.ts'
import { roleIn, wallIn } from '../access/role-in.ts'
import { Writers } from './writers.ts'

export interface SocketData {
  holder: Holder
  /** The meeting it said hello to. */
  meeting?: string
  /** How it said it stands. */
  report?: DeviceReport
}
type None = Record<string, never>
export type Io = Server<ScreenToServer, ServerToScreen, None, SocketData>
export type Socket = AnySocket<ScreenToServer, ServerToScreen, None, SocketData>

/** As large as the largest single entry can be on the wire, and far above any batch. */
const MESSAGE_LIMIT_BYTES = 1024 * 1024
const PING_EVERY_MS = 2_000
const PING_PATIENCE_MS = 3_000

type Log = Pick<FastifyBaseLogger, 'error'>

export interface Room {
  readonly deps: Deps
  readonly log: Log
  readonly io: Io
  readonly news: LogNews
  readonly presence: Presence
  readonly writers: Writers
  readonly tellClock: () => void
}

export interface Sockets {
  readonly attach: (server: HttpServer | HttpsServer) => void
  /** This device is something else now, in this meeting or in all. */
  readonly changed: (team: string, device: Device, meeting?: string) => void
  readonly tellClock: () => void
  readonly close: () => Promise<void>
}

export function openSockets(deps: Deps, log: Log): Sockets {
  const io: Io = new Server({
    transports: ['websocket'],
    serveClient: false,
    perMessageDeflate: false,
    maxHttpBufferSize: MESSAGE_LIMIT_BYTES,
    pingInterval: PING_EVERY_MS,
    pingTimeout: PING_PATIENCE_MS,
    allowRequest: ({ headers }, decide) =>
      decide(null, isOurs({ host: headers.host, origin: headers.origin }, deps.names)),
  })
  const room: Room = {
    deps,
    log,
    io,
    news: new LogNews(io),
    presence: new Presence(io, deps.storage.read),
    writers: new Writers((meeting) => deps.storage.read.writersOf(meeting)),
    tellClock: () => io.emit('clock', deps.time.standing()),
  }
  io.use((socket, next) => {
    letIn(deps, socket).then((refusal) => next(refusal && new NotLetIn(refusal)), next)
  })
  io.on('connection', (socket) => serve(room, socket))
  deps.storage.onNews((news) => {
    room.news.tell(news)
    room.writers.hear(news)
  })
  const clogged = closeClogged(io)
  return {
    attach: (server) => void io.attach(server),
    changed: (team, device, meeting) => {
      tellDevice(room, team, device)
      if (meeting !== undefined) room.presence.changed(meeting)
    },
    tellClock: room.tellClock,
    async close() {
      clogged.stop()
      room.presence.close()
      await io.close()
    },
  }
}

function deviceRoom(team: string, device: string): string {
  return `device ${team}/${device}`
}

/** Its data is the problem that the screen shows. */
class NotLetIn extends Error {
  readonly data: unknown

  constructor(refusal: Refusal) {
    super(refusal)
    this.data = problem(refusal)
  }
}

async function letIn({ storage }: Deps, socket: Socket): Promise<Refusal | undefined> {
  const holder = await holderOf(storage, cookieIn(socket.handshake.headers.cookie, DEVICE_COOKIE))
  if (holder) socket.data.holder = holder
  return refusalFor({ do: 'read' }, holder)
}

function serve(room: Room, socket: Socket): void {
  const { team, device } = socket.data.holder
  void socket.join(deviceRoom(team.id, device.id))
  const mayGoOn = allowance()
  const answering =
    <M, T>(handle: (message: M) => Promise<Answer<T>>) =>
    (message: M, answer: (answer: Answer<T>) => void) => {
      if (typeof answer !== 'function') return
      if (!mayGoOn()) {
        answer({ problem: problem('tooManyRequests') })
        return
      }
      handle(message).then(answer, () => answer({ problem: problem('serverFault') }))
    }
  socket.on('hello', answering(onHello(room, socket)))
  socket.on('append', answering(onAppend(room, socket)))
  socket.on('probe', (message, answer) => {
    if (typeof answer === 'function' && mayGoOn()) onProbe(room, message, answer)
  })
  socket.on('report', (message) => {
    if (mayGoOn()) onReport(room, socket, message)
  })
  socket.on('disconnect', () => leave(room, socket))
}

function leave({ presence, deps }: Room, socket: Socket): void {
  const { holder, meeting } = socket.data
  if (meeting === undefined) return
  presence.changed(meeting)
  const seen = { team: holder.team.id, device: holder.device.id, nowMs: deps.time.now() }
  deps.storage.run('deviceSeen', seen).catch(() => undefined)
}

function tellDevice({ io, presence }: Room, team: string, device: Device): void {
  const revoked = device.revokedAt !== undefined
  for (const socket of io.sockets.sockets.values()) {
    const { holder, meeting } = socket.data
    if (holder.device.id !== device.id || holder.team.id !== team) continue
    socket.data.holder = { ...holder, device }
    socket.emit('role', revoked ? { role: 'revoked' } : roleSaid(device, meeting))
    if (meeting !== undefined) presence.changed(meeting)
  }
  if (revoked) io.in(deviceRoom(team, device.id)).disconnectSockets(true)
}

function roleSaid(device: Device, meeting: string | undefined): RoleSaid {
  if (meeting === undefined) return { role: device.role }
  const wall = wallIn(device, meeting)
  return { role: roleIn(device, meeting), ...(wall && { wall }) }
}
