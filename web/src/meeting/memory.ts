/** The few things this device remembers besides the log: who it is, who holds it, what it heard. Forgetting costs little. */
import { meetingSchema, type Me, type Meeting } from '@pitlamp/contract'
import { uuidV7 } from '@pitlamp/race'
import type { WallReckoning } from '@pitlamp/sync'
import { v7 } from 'uuid'
import { readMe, readMeeting } from './kept.ts'
import { ofMeeting, openStore, type Store } from './store.ts'

export type Names = Readonly<Record<string, string>>

export class Memory {
  /** Undefined where the browser keeps nothing. */
  readonly store: Store | undefined

  constructor(store: Store | undefined) {
    this.store = store
  }

  static async open(): Promise<Memory> {
    return new Memory(await openStore().catch(() => undefined))
  }

  me(): Promise<Me | undefined> {
    return this.#read((store) => readMe(store))
  }
  rememberMe(me: Me): Promise<void> {
    return this.#write((store) => store.put('known', me, 'me'))
  }

  meeting(id: string): Promise<Meeting | undefined> {
    return this.#read((store) => readMeeting(store, id))
  }
  /** Every meeting ever listed or opened here, for when the server is gone. */
  async meetings(): Promise<Meeting[]> {
    const stored = await this.#read((store) => store.getAll('meetings'))
    return (stored ?? []).flatMap((one) => meetingSchema.safeParse(one).data ?? [])
  }
  rememberMeeting(meeting: Meeting): Promise<void> {
    return this.#write((store) => store.put('meetings', meeting, meeting.id))
  }

  /** Asks the browser not to clear this store when it wants room; only https and localhost can. */
  askToStay(): void {
    if ('storage' in navigator && 'persist' in navigator.storage) {
      void navigator.storage.persist().catch(() => undefined)
    }
  }

  /** A device makes its own id once; the one the server knows it by overrules. */
  async deviceId(): Promise<string> {
    const me = await this.me()
    const kept = me?.device.id ?? (await this.#known('deviceId'))
    const id = uuidV7.safeParse(kept).data ?? v7()
    await this.#write((store) => store.put('known', id, 'deviceId'))
    return id
  }

  async person(): Promise<string | undefined> {
    return uuidV7.safeParse(await this.#known('person')).data
  }
  rememberPerson(person: string | undefined): Promise<void> {
    return this.#write((store) => store.put('known', person, 'person'))
  }

  async wall(): Promise<WallReckoning | undefined> {
    const kept = await this.#known('wall')
    return isWallReckoning(kept) ? kept : undefined
  }
  rememberWall(wall: WallReckoning): Promise<void> {
    return this.#write((store) => store.put('known', wall, 'wall'))
  }

  /** What the devices of the team were last called. */
  async names(): Promise<Names> {
    const kept = await this.#known('names')
    const pairs = typeof kept === 'object' && kept !== null ? Object.entries(kept) : []
    return Object.fromEntries(
      pairs.filter((pair): pair is [string, string] => typeof pair[1] === 'string'),
    )
  }
  rememberNames(names: Names): Promise<void> {
    return this.#write((store) => store.put('known', names, 'names'))
  }

  async heard(meeting: string): Promise<string[]> {
    const keys = await this.#read((store) => store.getAllKeys('heard', ofMeeting(meeting)))
    return (keys ?? []).map(([, alert]) => alert)
  }
  rememberHeard(meeting: string, { alert, at }: { alert: string; at: number }): Promise<void> {
    return this.#write((store) => store.put('heard', at, [meeting, alert]))
  }

  #known(name: string): Promise<unknown> {
    return this.#read((store) => store.get('known', name))
  }

  async #read<T>(read: (store: Store) => Promise<T>): Promise<T | undefined> {
    return this.store && (await read(this.store).catch(() => undefined))
  }

  async #write(write: (store: Store) => Promise<unknown>): Promise<void> {
    if (this.store) await write(this.store).catch(() => undefined)
  }
}

function isWallReckoning(kept: unknown): kept is WallReckoning {
  if (typeof kept !== 'object' || kept === null) return false
  const wall = kept as Record<string, unknown>
  return ['offsetToDateMs', 'atDateMs', 'boundMs', 'epoch'].every((key) =>
    Number.isFinite(wall[key]),
  )
}
