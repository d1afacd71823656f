/**
 * What this device has in store of a meeting, checked as it is read: anything may have happened to it.
 * What cannot be read is left out; the log is fetched again from there on.
 */
import { meetingSchema, meSchema, type Me, type Meeting } from '@pitlamp/contract'
import { entrySchema, recordedEntrySchema } from '@pitlamp/race'
import type { Kept, Pending, SetAside } from '@pitlamp/sync'
import { ofMeeting, type Store } from './store.ts'

export async function readMeeting(store: Store, id: string): Promise<Meeting | undefined> {
  return meetingSchema.safeParse(await store.get('meetings', id)).data
}

/** Who this device is in its team, as the server last said. */
export async function readMe(store: Store): Promise<Me | undefined> {
  return meSchema.safeParse(await store.get('known', 'me')).data
}

export async function readKept(store: Store, meeting: string, device: string): Promise<Kept> {
  const range = ofMeeting(meeting)
  const [log, pending, setAside] = await Promise.all([
    store.getAll('log', range),
    store.getAll('pending', range),
    store.getAll('setAside', range),
  ])
  return {
    device,
    confirmed: log.flatMap((stored) => recordedEntrySchema.safeParse(stored).data ?? []),
    pending: pending.flatMap(readPending),
    setAside: setAside.flatMap(readSetAside),
  }
}

function readPending(stored: Pending): Pending[] {
  const entry = entrySchema.safeParse(stored.entry).data
  if (!entry) return []
  const recorded = recordedEntrySchema.safeParse(stored.recorded).data
  return [recorded ? { entry, recorded } : { entry }]
}

function readSetAside(stored: SetAside): SetAside[] {
  const entry = entrySchema.safeParse(stored.entry).data
  return entry ? [{ ...stored, entry }] : []
}
