/** What the contract suite builds its cases from. */
import type { Entry, Role } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import type { Storage } from './port.ts'

/** A store of its own for one test. */
export interface Bench {
  /** The store as it is open now. */
  readonly storage: Storage
  readonly reopen: () => Promise<void>
  readonly close: () => Promise<void>
}

/** Cases of the contract: what holds, and how it shows on a store of its own. */
export type Cases = Readonly<Record<string, (bench: Bench) => Promise<void>>>

export const anId = uuidV7

/** Server time of whatever a test does not date itself; meetings begin at 0 and run with it. */
export const NOW_MS = 1_000_000

export function anEntry(given: Partial<Entry> & Pick<Entry, 'device' | 'n'>): Entry {
  return {
    v: 1,
    id: anId(),
    at: 999_000,
    atBoundMs: 40,
    epoch: 1,
    kind: 'trackCall.1',
    body: '{}',
    ...given,
  }
}

export interface JoinedDevice {
  readonly bench: Bench
  readonly id: string
  readonly team: string
  readonly tokenHash: string
  /** The sender's part of an append. */
  readonly sends: { readonly team: string; readonly device: string; readonly nowMs: number }
}

/** A device of the first team, let in by a QR. */
export async function joined(
  bench: Bench,
  given: { role: Role; id?: string },
): Promise<JoinedDevice> {
  const { team } = await bench.storage.run('foundTeam', { id: anId(), name: 'Our team', nowMs: 0 })
  const codeHash = await invited(bench, { team, role: given.role, kind: 'qr' })
  const id = given.id ?? anId()
  const tokenHash = anId()
  await bench.storage.run('join', {
    codeHash,
    device: id,
    name: 'A device',
    tokenHash,
    nowMs: NOW_MS,
  })
  return { bench, id, team, tokenHash, sends: { team, device: id, nowMs: NOW_MS } }
}

export async function invited(
  bench: Bench,
  given: { team: string; role: Role; kind: 'qr' | 'typed' },
): Promise<string> {
  const codeHash = anId()
  await bench.storage.run('makeInvite', {
    ...given,
    codeHash,
    validUntil: NOW_MS + 1_000,
    nowMs: NOW_MS,
  })
  return codeHash
}

export async function meetingOf(bench: Bench, team: string): Promise<string> {
  const id = anId()
  await bench.storage.run('createMeeting', { team, meeting: { id, name: 'A meeting' }, nowMs: 0 })
  return id
}
