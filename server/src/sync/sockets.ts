/**
 * The live line to every screen. A screen says hello, is told where the log stands and gets what comes after;
 * it appends, probes the clock, and hears who else is there. What it may do is read anew for every append.
 */
import {
  problem,
  type Device,
  type DeviceReport,
  type Refusal,
  type ScreenToServer,
  type ServerToScreen,
} from '@pitlamp/contract'
import type { Server as HttpServer } from 'node:http'
import type { Server as HttpsServer } from 'node:https'
import { Server, type Socket as AnySocket } from 'socket.io'
import { DEVICE_COOKIE, holderOf, refusalFor } from '../access/guard.ts'
import { isOurs } from '../access/origin.ts'
import type { Deps } from '../deps.ts'
import type { Holder } from '../storage/reads/access.ts'
import { NOT_MEASURED, type Metrics } from '../metrics/metrics.ts'
import { answering, type Log } from './answering.ts'
import { closeClogged } from './clogged.ts'
import { cookieIn } from './cookie.ts'
import { onAppend, onHello, onProbe, onReport } from './events.ts'
import { LogNews } from './log-news.ts'
import { NewsLag } from './news-lag.ts'
import { Presence } from './presence.ts'
import { allowance } from './allowance.ts'
import { attendTo, type Concerns } from './attend.ts'
import { Elsewhere } from './elsewhere.ts'
import { deviceRoom, tellDevice, tellIfNews } from './tell-device.ts'
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

export interface Room {
  readonly deps: Deps
  readonly log: Log
  readonly io: Io
  readonly news: LogNews
  readonly lag: NewsLag
  readonly metrics: Pick<Metrics, 'refused'>
  readonly presence: Presence
  readonly writers: Writers
  readonly tellClock: () => void
}

export interface Sockets {
  readonly attach: (server: HttpServer | HttpsServer) => void
  /** This device is something else now, in this meeting or in all. */
  readonly changed: (team: string, device: Device, meeting?: string) => void
  readonly tellClock: () => void
  readonly standing: () => SocketsStanding
  readonly close: () => Promise<void>
}

export interface SocketsStanding {
  readonly open: number
  /** What is listened to from a screen; nothing while none is there. */
  readonly events: readonly string[]
}

export function openSockets(deps: Deps, log: Log): Sockets {
  const io = serverFor(deps)
  const metrics = deps.measured?.metrics ?? NOT_MEASURED
  const { neighbours } = deps.storage
  const lag = new NewsLag(metrics, () => deps.time.now())
  const room: Room = {
    deps,
    log,
    io,
    news: new LogNews(io, deps.storage.read, (...told) => {
      lag.told(...told)
      room.writers.wrote(...told)
    }),
    lag,
    metrics,
    presence: new Presence(io, deps.storage.read, neighbours && new Elsewhere(neighbours, deps)),
    writers: new Writers((meeting) => deps.storage.read.writersOf(meeting)),
    tellClock: () => {
      io.emit('clock', deps.time.standing())
      neighbours?.say({ say: 'clock' })
    },
  }
  io.use((socket, next) => {
    letIn(deps, socket).then((refusal) => {
      if (refusal) metrics.refused('message', refusal)
      next(refusal && new NotLetIn(refusal))
    }, next)
  })
  io.on('connection', (socket) => serve(room, socket))
  deps.storage.onNews((news) => {
    room.news.tell(news)
    room.writers.hear(news)
  })
  const clogged = closeClogged(io)
  const attending = neighbours && attendTo(neighbours, deps, concernsOf(room))
  return {
    attach: (server) => void io.attach(server),
    changed: (team, device, meeting) => {
      tellDevice(room, team, device)
      neighbours?.say({ say: 'device' })
      if (meeting !== undefined) room.presence.changed(meeting)
    },
    tellClock: room.tellClock,
    standing: () => standingOf(io),
    async close() {
      clogged.stop()
      room.presence.close()
      await attending?.stop()
      await io.close()
    },
  }
}

function serverFor({ names }: Deps): Io {
  return new Server({
    transports: ['websocket'],
    serveClient: false,
    perMessageDeflate: false,
    maxHttpBufferSize: MESSAGE_LIMIT_BYTES,
    pingInterval: PING_EVERY_MS,
    pingTimeout: PING_PATIENCE_MS,
    allowRequest: ({ headers }, decide) =>
      decide(null, isOurs({ host: headers.host, origin: headers.origin }, names)),
  })
}

/** What other processes do, as it shows to the screens here. */
function concernsOf({ io, news, presence }: Room): Concerns {
  return {
    heads: () => news.heads(),
    logCameTo: (meeting, to) => news.tell({ meeting, from: to, to, entries: [] }),
    devicesChanged: (changed) => {
      for (const { team, device } of changed) tellIfNews({ io, presence }, team, device)
    },
    screensChanged: (meeting) => presence.changedElsewhere(meeting),
    showAgain: () => {
      for (const meeting of news.heads().keys()) presence.changed(meeting)
    },
  }
}

function standingOf(io: Io): SocketsStanding {
  const [first] = io.sockets.sockets.values()
  return { open: io.sockets.sockets.size, events: first?.eventNames().map(String) ?? [] }
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
  const given = { ...room, mayGoOn }
  socket.on('hello', answering({ ...given, event: 'hello' }, onHello(room, socket)))
  socket.on('append', answering({ ...given, event: 'append' }, onAppend(room, socket)))
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
