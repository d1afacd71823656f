/**
 * The baseline over PostgreSQL: what arrives is inserted, one row a transaction, and sent to every connection of
 * its meeting by `ws`. No parsing beyond the JSON, no checks, no numbers but a counter here.
 */
import type { AddressInfo } from 'node:net'
import pg from 'pg'
import { WebSocketServer, type WebSocket } from 'ws'

const [url] = process.argv.slice(2)
if (url === undefined) throw new Error('Say which database.')
const CONNECTIONS = 4
const pool = new pg.Pool({ connectionString: url, max: CONNECTIONS })
await pool.query(`create table bare_entry (
  meeting text not null, seq bigint not null, id text not null unique, device text not null,
  n bigint not null, at bigint not null, kind text not null, body text not null,
  primary key (meeting, seq))`)
const insert = 'insert into bare_entry values ($1, $2, $3, $4, $5, $6, $7, $8)'
const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false })
const rooms = new Map<string, Set<WebSocket>>()
let seq = 0

interface Sent {
  readonly id: string
  readonly device: string
  readonly n: number
  readonly at: number
  readonly kind: string
  readonly body: string
}

server.on('connection', (socket, request) => {
  const meeting = request.url?.slice(1) ?? ''
  const room = rooms.get(meeting) ?? new Set()
  rooms.set(meeting, room.add(socket))
  socket.on('close', () => room.delete(socket))
  socket.on('message', (data: Buffer) => void take(meeting, data))
})

async function take(meeting: string, data: Buffer): Promise<void> {
  const entry = JSON.parse(data.toString()) as Sent
  const own = ++seq
  const { id, device, n, at, kind, body } = entry
  await pool.query(insert, [meeting, own, id, device, n, at, kind, body])
  const text = JSON.stringify({ ...entry, seq: own })
  for (const screen of rooms.get(meeting) ?? []) screen.send(text)
}

server.on('listening', () => {
  console.log(JSON.stringify({ port: (server.address() as AddressInfo).port }))
})
process.on('SIGTERM', () => process.exit(0))
