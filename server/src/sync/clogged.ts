/** A screen that does not take what it is sent is closed: it comes back, catches up, and holds up nobody meanwhile. */
import type { Io } from './sockets.ts'

const UNSENT_LIMIT_BYTES = 1024 * 1024
const LOOK_EVERY_MS = 1_000

export function closeClogged(io: Io): { readonly stop: () => void } {
  const timer = setInterval(() => {
    for (const socket of io.sockets.sockets.values()) {
      if (unsentBytes(socket.conn) > UNSENT_LIMIT_BYTES) socket.conn.close(true)
    }
  }, LOOK_EVERY_MS)
  timer.unref()
  return { stop: () => clearInterval(timer) }
}

/** The parts of the library's connection that it does not declare: ws below, and its own queue. */
interface Queues {
  readonly transport: { readonly socket?: { readonly bufferedAmount: number } }
  readonly writeBuffer: readonly { readonly data?: unknown }[]
}

/** What the operating system has not taken yet, and what waits behind it. */
export function unsentBytes(connection: unknown): number {
  const { transport, writeBuffer } = connection as Queues
  const behind = writeBuffer.map(({ data }) => (typeof data === 'string' ? data.length : 0))
  return behind.reduce((sum, length) => sum + length, transport.socket?.bufferedAmount ?? 0)
}
