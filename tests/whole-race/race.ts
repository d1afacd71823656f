/** Real devices of one team at a real server, and a meeting whose clock stands behind everything that is pressed. */
import { createHash } from 'node:crypto'
import { meetingSchema } from '@pitlamp/contract'
import type { Body, Entry, Kind, State } from '@pitlamp/race'
import { cursor } from '@pitlamp/sync'
import { v7 as uuidV7 } from 'uuid'
import { join, type Device } from '../device.ts'
import { startServer, type RunningServer } from '../running-server.ts'
import { Screen } from '../screen.ts'
import { car, crew, plan, rulesOf, type Policies } from './documents.ts'

/** Noon in Dublin, 5 June 2027. */
const GREEN = 1_812_193_200_000
/** The clock of the meeting stands here when it is made: two hours after the first green. */
const STANDS_AT = GREEN + 7_200_000

export const at = (seconds: number): number => GREEN + seconds * 1_000

export class Race {
  readonly meeting: string
  readonly server: RunningServer
  readonly captain: Device
  readonly captains: Screen
  readonly wall: Screen
  readonly phone: Screen

  private constructor(of: { meeting: string; server: RunningServer; devices: Device[] }) {
    this.meeting = of.meeting
    this.server = of.server
    const [captain, wall, phone] = of.devices
    if (!captain || !wall || !phone) throw new Error('A device is missing.')
    this.captain = captain
    this.captains = new Screen(captain, of.meeting)
    this.wall = new Screen(wall, of.meeting)
    this.phone = new Screen(phone, of.meeting)
  }

  static async open(policies: Policies): Promise<Race> {
    const server = await startServer()
    const captain = await join(server.url, await server.captainCode(), 'Captain’s laptop')
    const made = await captain.call('POST', '/api/meetings', {
      id: uuidV7(),
      name: 'Three twenties at the Bell Foundry',
      fictional: { rate: 1, startsAtMs: STANDS_AT },
    })
    const devices = [
      captain,
      await captain.invite('pitWall', 'Wall tablet'),
      await captain.invite('crew', 'Pell’s phone'),
    ]
    const race = new Race({ meeting: meetingSchema.parse(made).id, server, devices })
    for (const screen of race.screens) await screen.live()
    await race.adopt({ rules: rulesOf(policies), crew, car, plan })
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

  async close(): Promise<void> {
    for (const screen of this.screens) screen.close()
    await this.server.stop()
  }

  private async adopt(documents: Readonly<Record<string, unknown>>): Promise<void> {
    for (const [document, content] of Object.entries(documents)) {
      const path = `/api/meetings/${this.meeting}/documents/${document}`
      await this.captain.call('PUT', path, { basedOn: 0, content })
      const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex')
      const body = { version: 1, sha256, content, appliesFrom: at(-3_600), as: 'change' }
      const adopted = { ...body, document } as Body<'adopted.1'>
      await this.say(-120, [this.captains, 'adopted.1', adopted])
    }
  }
}
