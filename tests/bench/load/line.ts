/** One connection of the generator, to either server, with the same plain `ws` below. */
import { PROTOCOL_VERSION } from '@pitlamp/contract'
import type { Entry } from '@pitlamp/race'
import { WebSocket } from 'ws'

export interface Line {
  /** Some at once are one message to ours. */
  readonly press: (...entries: readonly Entry[]) => void
  readonly close: () => void
}

export interface Target {
  readonly kind: 'pitlamp' | 'bare'
  readonly port: number
  readonly cookie?: string
  readonly meeting?: string
}

/** `heard` gets the ids of the entries that a message brings. Resolves when the line is live. */
export function openLine(target: Target, heard: (ids: readonly string[]) => void): Promise<Line> {
  return target.kind === 'bare' ? openBare(target, heard) : openPitlamp(target, heard)
}

function openBare(
  { port, meeting = '' }: Target,
  heard: (ids: readonly string[]) => void,
): Promise<Line> {
  const socket = new WebSocket(`ws://127.0.0.1:${port}/${meeting}`, { perMessageDeflate: false })
  socket.on('message', (data: Buffer) => {
    heard([(JSON.parse(data.toString()) as Entry).id])
  })
  return new Promise((resolve, reject) => {
    socket.once('error', reject).once('open', () =>
      resolve({
        press: (...entries) => {
          for (const entry of entries) socket.send(JSON.stringify(entry))
        },
        close: () => socket.terminate(),
      }),
    )
  })
}

/** Engine.IO 4 and Socket.IO 5 by hand: `0` open, `2` ping, `3` pong, `40` connect, `42` event, `43` answer. */
function openPitlamp(target: Target, heard: (ids: readonly string[]) => void): Promise<Line> {
  const { port, cookie, meeting } = target
  const url = `ws://127.0.0.1:${port}/socket.io/?EIO=4&transport=websocket`
  const socket = new WebSocket(url, {
    perMessageDeflate: false,
    headers: { cookie: cookie ?? '' },
  })
  const hello = { protocol: PROTOCOL_VERSION, meeting, after: 0 }
  let asked = 1
  const line: Line = {
    press(...entries) {
      const message = ['append', { meeting, entries }]
      socket.send(`42${asked++}${JSON.stringify(message)}`)
    },
    close: () => socket.terminate(),
  }
  return new Promise((resolve, reject) => {
    socket.once('error', reject)
    socket.on('message', (data: Buffer) => {
      const text = data.toString()
      if (text === '2') socket.send('3')
      else if (text.startsWith('0')) socket.send('40')
      else if (text.startsWith('40')) socket.send(`420${JSON.stringify(['hello', hello])}`)
      else if (text.startsWith('44')) reject(new Error(text))
      else if (text.startsWith('430')) resolve(line)
      else if (text.startsWith('42["push"')) heard(idsIn(text))
    })
  })
}

function idsIn(push: string): readonly string[] {
  const [, { entries }] = JSON.parse(push.slice(2)) as [string, { entries: Entry[] }]
  return entries.map(({ id }) => id)
}
