/** What this device keeps in IndexedDB. Rooms are keyed by meeting first, so that a meeting reads as a range. */
import type { Draft, Meeting } from '@pitlamp/contract'
import type { RecordedEntry } from '@pitlamp/race'
import type { Pending, SetAside } from '@pitlamp/sync'
import { openDB, type DBSchema, type IDBPDatabase } from 'idb'

interface Rooms extends DBSchema {
  /** A few things by name: who this device is, who holds it, how its clock stood. */
  known: { key: string; value: unknown }
  meetings: { key: string; value: Meeting }
  /** By meeting and number: the log as the server confirmed it. */
  log: { key: [meeting: string, seq: number]; value: RecordedEntry }
  /** By meeting and entry: the outbox. */
  pending: { key: [meeting: string, entry: string]; value: Pending }
  setAside: { key: [meeting: string, entry: string]; value: SetAside }
  /** By meeting and device: the last number and time given out. */
  counters: { key: [meeting: string, device: string]; value: Counter }
  /** By meeting and alert: when it was heard here. */
  heard: { key: [meeting: string, alert: string]; value: number }
  /** By meeting and document: as the server last had it. */
  drafts: { key: [meeting: string, document: string]; value: Draft }
}
export interface Counter {
  readonly n: number
  readonly lastAt: number
  /** `lastAt` holds for this reading of the server's clock. */
  readonly epoch: number
}
export type Store = IDBPDatabase<Rooms>

const VERSION = 2

/** Rejects where the browser keeps nothing, as some do in private windows. */
export async function openStore(name = 'pitlamp'): Promise<Store> {
  return openDB<Rooms>(name, VERSION, {
    upgrade: (database) => {
      for (const room of [
        'known',
        'meetings',
        'log',
        'pending',
        'setAside',
        'counters',
        'heard',
        'drafts',
      ] as const)
        if (!database.objectStoreNames.contains(room)) database.createObjectStore(room)
    },
    // A newer build in another tab wants to change the rooms: it must not wait for this one.
    blocking: (_from, _to, event) => (event.target as IDBDatabase).close(),
  })
}

/** Every key that begins with this meeting. */
export function ofMeeting(meeting: string): IDBKeyRange {
  return IDBKeyRange.bound([meeting], [meeting, []])
}
