/** Real devices of one team at a real server, and a meeting whose clock stands behind everything that is pressed. */
import { createHash } from 'node:crypto'
import { meetingSchema } from '@pitlamp/contract'
import type { Body, DocumentName, Entry, Kind, State } from '@pitlamp/race'
import { cursor } from '@pitlamp/sync'
import { v7 as uuidV7 } from 'uuid'
import { join, type Device } from './device.ts'
import { startServer, type RunningServer } from './running-server.ts'
import { Screen } from './screen.ts'

/** Noon in Dublin, 5 June 2027. */
const GREEN = 1_812_193_200_000
/** The clock of the meeting stands here when it is made: thirty hours after the first green. */
const STANDS_AT = GREEN + 108_000_000

export const at = (seconds: number): number => GREEN + seconds * 1_000

/** What a meeting is called and goes by. */
export interface Scripted {
  readonly name: string
  readonly documents: Readonly<Partial<Record<DocumentName, unknown>>>
  /** When they are adopted, in seconds after the first green. */
  readonly adoptedAt?: number
}

export class Race {
  readonly meeting: string
  readonly server: RunningServer
  readonly devices: readonly Device[]
  readonly captain: Device
  readonly captains: Screen
  readonly wall: Screen
  readonly phone: Screen
  readonly #versions = new Map<DocumentName, number>()

  private constructor(of: { meeting: string; server: RunningServer; devices: readonly Device[] }) {
    this.meeting = of.meeting
    this.server = of.server
    this.devices = of.devices
    const [captain, wall, phone] = of.devices
    if (!captain || !wall || !phone) throw new Error('A device is missing.')
    this.captain = captain
    this.captains = new Screen(captain, of.meeting)
    this.wall = new Screen(wall, of.meeting)
    this.phone = new Screen(phone, of.meeting)
  }

  /** With the server and the devices of a race before it, where there was one. */
  static async open(scripted: Scripted, before?: Race): Promise<Race> {
    const { name, documents, adoptedAt = -120 } = scripted
    const server = before?.server ?? (await startServer())
    const devices = before?.devices ?? (await joined(server))
    const [captain] = devices
    if (!captain) throw new Error('Nobody has joined.')
    const made = await captain.call('POST', '/api/meetings', {
      id: uuidV7(),
      name,
      fictional: { rate: 1, startsAtMs: STANDS_AT },
    })
    const race = new Race({ meeting: meetingSchema.parse(made).id, server, devices })
    for (const screen of race.screens) await screen.live()
    for (const [document, content] of Object.entries(documents)) {
      await race.adopt(adoptedAt, { document: document as DocumentName, content })
    }
    return race
  }

  get screens(): readonly Screen[] {
    return [this.captains, this.wall, this.phone]
  }

  /** Pressed so many seconds after the first green, and saved. */
  async say<K extends Kind>(
    seconds: number,
    [screen, kind, body]: readonly [Screen, K, Body<K>],
  ): Promise<Entry> {
    const entry = screen.press(kind, body, at(seconds))
    await screen.until(`${kind} to be saved`, () => {
      if (screen.saved(entry) === 'refused') throw new Error(`${kind} was refused.`)
      return screen.saved(entry) === 'saved'
    })
    return entry
  }

  /** The state every connected screen shows alike. */
  async state(): Promise<State> {
    const connected = this.screens.filter((screen) => screen.connected)
    const most = Math.max(...connected.map(({ sync }) => cursor(sync)))
    for (const screen of connected) {
      await screen.until('the whole log', ({ sync }) => cursor(sync) >= most)
    }
    const [first = '', ...others] = connected.map((screen) => JSON.stringify(screen.state()))
    if (others.some((state) => state !== first)) throw new Error('Two screens show other things.')
    return JSON.parse(first) as State
  }

  /** The server stays, for a race after it. */
  leave(): void {
    for (const screen of this.screens) screen.close()
  }

  async close(): Promise<void> {
    this.leave()
    await this.server.stop()
  }

  /** The next version of a document, put down over HTTP and adopted; the first one holds from an hour before. */
  async adopt(
    seconds: number,
    { document, content }: { readonly document: DocumentName; readonly content: unknown },
  ): Promise<void> {
    const basedOn = this.#versions.get(document) ?? 0
    this.#versions.set(document, basedOn + 1)
    const path = `/api/meetings/${this.meeting}/documents/${document}`
    await this.captain.call('PUT', path, { basedOn, content })
    const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex')
    const appliesFrom = at(basedOn === 0 ? seconds - 3_600 : seconds)
    const body = { version: basedOn + 1, sha256, content, appliesFrom, as: 'change' }
    const adopted = { ...body, document } as Body<'adopted.1'>
    await this.say(seconds, [this.captains, 'adopted.1', adopted])
  }
}

async function joined(server: RunningServer): Promise<readonly Device[]> {
  const captain = await join(server.url, await server.captainCode(), 'Captain’s laptop')
  return [
    captain,
    await captain.invite('pitWall', 'Wall tablet'),
    await captain.invite('crew', 'Pell’s phone'),
  ]
}
