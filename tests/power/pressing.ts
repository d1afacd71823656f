/** A device that appends as fast as it is acknowledged, and remembers what it was told. */
import { PROTOCOL_VERSION, type Answer, type Appended } from '@pitlamp/contract'
import { ENVELOPE_VERSION, type Entry } from '@pitlamp/race'
import { io, type Socket } from 'socket.io-client'
import { v7 as uuidV7 } from 'uuid'
import type { Acknowledged, Teller } from '../audit.ts'
import type { Device } from '../device.ts'
import type { Random } from './random.ts'

export interface Presser extends Teller {
  readonly device: Device
  /** By entry id. */
  readonly acknowledged: Map<string, Acknowledged>
  /** Sent and not answered for when the connection went: sent again first thing. */
  underWay: readonly Entry[]
  /** Entries made so far. */
  n: number
}

export function newPresser(device: Device): Presser {
  return { device, acknowledged: new Map(), underWay: [], n: 0 }
}

/** Appends until the connection is lost. */
export async function press(presser: Presser, meeting: string, random: Random): Promise<void> {
  const connection = await connect(presser.device, meeting)
  do {
    if (presser.underWay.length === 0) presser.underWay = newEntries(presser, random)
  } while (await append(presser, meeting, connection))
  connection.socket.close()
}

export async function sendWhatWasUnderWay(presser: Presser, meeting: string): Promise<void> {
  if (presser.underWay.length === 0) return
  const connection = await connect(presser.device, meeting)
  await append(presser, meeting, connection)
  connection.socket.close()
}

interface Connection {
  readonly socket: Socket
  /** Settles when the connection is lost, before or after it came about. */
  readonly lost: Promise<undefined>
}

async function connect(device: Device, meeting: string): Promise<Connection> {
  const socket = io(device.url, {
    transports: ['websocket'],
    extraHeaders: device.headers,
    reconnection: false,
    forceNew: true,
  })
  const lost = new Promise<undefined>((resolve) => {
    socket.once('disconnect', () => resolve(undefined))
    socket.once('connect_error', () => resolve(undefined))
  })
  const connection = { socket, lost }
  await ask(connection, 'hello', { protocol: PROTOCOL_VERSION, meeting, after: 0 })
  return connection
}

/** Whether there was an answer. */
async function append(presser: Presser, meeting: string, connection: Connection): Promise<boolean> {
  const entries = presser.underWay
  const answer = (await ask(connection, 'append', { meeting, entries })) as
    Answer<Appended> | undefined
  if (answer === undefined) return false
  if ('problem' in answer) throw new Error(`${presser.device.name}: ${answer.problem.title}`)
  answer.ok.results.forEach((result, index) => {
    const entry = entries[index]
    if (result.outcome === 'refused' || !entry) throw new Error(JSON.stringify(result))
    presser.acknowledged.set(entry.id, { entry, seq: result.seq })
  })
  presser.underWay = []
  return true
}

async function ask({ socket, lost }: Connection, event: string, message: object): Promise<unknown> {
  const answered = socket.emitWithAck(event, message).catch(() => undefined)
  return Promise.race([answered, lost])
}

const MOST_AT_ONCE = 5
const LONGEST = 3_000

function newEntries(presser: Presser, random: Random): readonly Entry[] {
  return Array.from({ length: 1 + random.below(MOST_AT_ONCE) }, () => ({
    v: ENVELOPE_VERSION,
    id: uuidV7(),
    device: presser.device.id,
    n: ++presser.n,
    at: 1_800_000_000_000 + presser.n,
    atBoundMs: 0,
    epoch: 0,
    // A kind no build knows: stored and forwarded byte for byte, its spaces and escapes included.
    kind: 'fromTheFuture.1',
    body: `{ "words":\t"\\u00e9 é 🏁 ${'x'.repeat(random.below(LONGEST))}"}`,
  }))
}
