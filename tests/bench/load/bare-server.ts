/**
 * The baseline: what arrives is inserted durably by bare better-sqlite3, one row a transaction, and sent to every
 * connection by `ws`. No parsing beyond the JSON, no checks, no numbers. Its table is the server's own.
 */
import Database from 'better-sqlite3'
import type { AddressInfo } from 'node:net'
import { WebSocketServer } from 'ws'
import { insertInto, makeTables } from './entry-table.ts'

const [file] = process.argv.slice(2)
if (file === undefined) throw new Error('Say where the file is to be.')
const database = new Database(file)
await makeTables(database)
const insert = insertInto(database)
const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false })
let seq = 0

server.on('connection', (socket) => {
  socket.on('message', (data: Buffer) => {
    const entry = JSON.parse(data.toString()) as Record<string, unknown>
    seq += 1
    insert({ ...entry, seq })
    const text = JSON.stringify({ ...entry, seq })
    for (const screen of server.clients) screen.send(text)
  })
})
server.on('listening', () => {
  console.log(JSON.stringify({ port: (server.address() as AddressInfo).port }))
})
process.on('SIGTERM', () => process.exit(0))
