/** What this screen knows of the server and the server of it: whether it is there, who this device is, who else. */
import {
  problem,
  SILENCE_MS,
  type Answer,
  type Appended,
  type Me,
  type DeviceReport,
  type Meeting as Info,
  type Problem,
  type WallStanding,
} from '@pitlamp/contract'
import type { Entry, Role } from '@pitlamp/race'
import { installation } from '../installation.svelte.ts'
import type { Connection, Listener } from './connection.ts'
import type { Memory, Names } from './memory.ts'
import type { Connection as Standing, MeetingPort, WallShown } from './port.ts'

export interface Known {
  readonly memory: Memory
  readonly me: Me
  readonly info: Info
  readonly names: Names
}

/** What the rest of the meeting hears of the line. */
export type Ears = Pick<
  Listener,
  'introduce' | 'welcomed' | 'lost' | 'pushed' | 'clockSaid' | 'sampled'
> & {
  readonly roleChanged: () => void
  /** This device was the wall and is crew again. */
  readonly wallGone: () => void
  /** How this device stands just now. */
  readonly report: () => DeviceReport | undefined
  /** Out of the team: what is still kept here goes to the captain. */
  readonly takenOut: () => void
}

export class Line {
  standing = $state<Standing>('silent')
  silentForMs = $state(0)
  problem = $state<string>()
  screens = $state.raw<MeetingPort['screens']>([])
  wall = $state.raw<WallShown>({ own: undefined, taken: [] })
  /** What was said of this device last. */
  #reported = ''
  me: Me
  info: Info
  names: Names
  #connection: Connection | undefined
  readonly #memory: Memory
  readonly #ears: Ears

  constructor({ memory, me, info, names }: Known, ears: Ears) {
    this.#memory = memory
    this.#ears = ears
    this.me = $state.raw(me)
    this.info = $state.raw(info)
    this.names = $state.raw(names)
  }

  open(Line: typeof Connection): void {
    this.#connection ??= new Line(this.info.id, this.#listener())
    this.#connection.open()
  }

  close(): void {
    this.#connection?.close()
  }

  nudge(): void {
    this.#connection?.nudge()
  }

  burst(probes: number): void {
    void this.#connection?.burst(probes)
  }

  /** Undefined where no answer came. */
  append(entries: readonly Entry[]): Promise<Answer<Appended> | undefined> {
    return this.#connection?.append(entries) ?? Promise.resolve(undefined)
  }

  /** Called often, and once the server has been quiet too long: says so, and that it is so no more. */
  watch(): void {
    const silentForMs = this.#connection?.silentForMs ?? Infinity
    const silent = silentForMs > SILENCE_MS
    this.silentForMs = silent ? silentForMs : 0
    if (this.standing !== 'revoked') this.standing = silent ? 'silent' : 'live'
    this.#report()
  }

  /** Says how this device stands, where that has changed since it was said on this connection. */
  #report(): void {
    if (this.standing !== 'live') return
    const report = this.#ears.report()
    if (!report) return
    const words = JSON.stringify(report)
    if (words !== this.#reported && this.#connection?.report(report)) this.#reported = words
  }

  #listener(): Listener {
    const ears = this.#ears
    return {
      introduce: ears.introduce,
      lost: ears.lost,
      pushed: ears.pushed,
      clockSaid: ears.clockSaid,
      welcomed: (welcome) => {
        this.problem = undefined
        this.info = welcome.meeting
        void this.#memory.rememberMeeting(welcome.meeting)
        this.#reported = ''
        this.#learn(welcome.writers ?? [])
        this.#hold(welcome.device)
        ears.welcomed(welcome)
        this.watch()
      },
      refused: (problem) => this.#refusedBy(problem),
      presenceSaid: ({ screens, wallTaken = [] }) => {
        this.screens = screens
        this.wall = { ...this.wall, taken: wallTaken }
        this.#learn([...wallTaken, ...screens])
      },
      sampled: (sample) => {
        ears.sampled(sample)
        if (this.standing === 'silent') this.watch()
      },
      quiet: () => this.watch(),
      roleSaid: ({ role, wall }) => {
        if (role === 'revoked') this.#refusedBy(problem('revoked'))
        else this.#hold({ ...this.me.device, role, wall })
      },
    }
  }

  #learn(named: readonly { readonly device: string; readonly name: string }[]): void {
    const learnt = Object.fromEntries(named.map(({ device, name }) => [device, name]))
    this.names = { ...this.names, ...learnt }
    void this.#memory.rememberNames(this.names)
  }

  #refusedBy({ refusal, title, detail }: Problem): void {
    this.problem = [title, detail].filter(Boolean).join(' ')
    if (refusal === 'otherProtocol') installation.lookForNewer()
    if (refusal !== 'revoked' && refusal !== 'notJoined') return
    this.standing = 'revoked'
    this.close()
    if (refusal === 'revoked') this.#ears.takenOut()
  }

  #hold({ wall, ...device }: Held): void {
    this.wall = { ...this.wall, own: wall }
    const before = this.me.device
    if (before.role === device.role && before.name === device.name) return
    // Also where it happened while this page was closed: what was remembered was the wall.
    if (before.role === 'pitWall' && device.role === 'crew') this.#ears.wallGone()
    this.me = { ...this.me, device }
    void this.#memory.rememberMe(this.me)
    this.#ears.roleChanged()
  }
}

interface Held {
  readonly id: string
  readonly name: string
  readonly role: Role
  readonly wall?: WallStanding | undefined
}
