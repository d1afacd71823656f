/** A team with something of everything, for the tests of who sees and changes it. */
import type { Role } from '@pitlamp/race'
import Database from 'better-sqlite3'
import { join } from 'node:path'
import { v7 as uuidV7 } from 'uuid'
import type { AppBench, BenchDevice } from '../app-bench.ts'
import type { Named } from './every-way-in.ts'

export interface Team {
  readonly captain: BenchDevice
  readonly revoked: BenchDevice
  /** A crew device that has taken the wall of the meeting. */
  readonly wall: BenchDevice
  readonly of: (role: Role) => BenchDevice
  /** Everything of the team that can be named, asked for by this device. */
  readonly named: (asking: BenchDevice) => Named
  /** Words and ids that no answer to another team may hold. */
  readonly marks: readonly string[]
}

export async function makeTeam(bench: AppBench, name: string): Promise<Team> {
  const join = (role: Role) => bench.device(role, name)
  const [captain, pitWall, crew, viewer] = [
    await join('captain'),
    await join('pitWall'),
    await join('crew'),
    await join('viewer'),
  ]
  const [revoked, wall] = [await join('pitWall'), await join('crew')]
  const id = uuidV7()
  await captain.ask('POST /api/meetings', { body: { id, name: `Meeting of ${name}` } })
  const note = captain.entry({ kind: 'note.1', body: JSON.stringify({ words: `Note of ${name}` }) })
  await captain.ask(`POST /api/meetings/${id}/entries`, { body: { meeting: id, entries: [note] } })
  await captain.ask(`PUT /api/meetings/${id}/documents/rules`, {
    body: { basedOn: 0, content: `Rules of ${name}` },
  })
  const person = { id: uuidV7(), name: `Person of ${name}` }
  await captain.ask('POST /api/people', { body: person })
  await captain.ask(`PATCH /api/devices/${wall.id}`, { body: { mayTakeWallIn: id } })
  await wall.ask(`POST /api/meetings/${id}/wall/take`, { body: {} })
  const left = await trayOf(captain, revoked, id)
  const invite = await captain.ask('POST /api/invites', { body: { role: 'viewer', as: 'qr' } })
  const plan = await captain.ask(`POST /api/meetings/${id}/plan-link`)
  const codes = { join: codeIn(invite.body), plan: codeIn(plan.body) }
  const devices = { captain, pitWall, crew, viewer }
  return {
    ...{ captain, revoked, wall },
    of: (role) => devices[role],
    named: ({ entry }) => ({
      ...{ meeting: id, device: wall.id, person: person.id, codes },
      ...{ gone: { device: revoked.id, entry: left }, entry: () => entry() },
    }),
    marks: [
      ...[id, name, note.id, person.id, left, captain.team, codes.join, codes.plan],
      ...[captain, pitWall, crew, viewer, revoked, wall].map((device) => device.id),
    ],
  }
}

/** What a device sends that was taken out. @returns the entry's id */
async function trayOf(captain: BenchDevice, gone: BenchDevice, meeting: string): Promise<string> {
  await captain.ask(`PATCH /api/devices/${gone.id}`, { body: { revoked: true } })
  const entry = gone.entry()
  await gone.ask(`POST /api/meetings/${meeting}/entries`, { body: { meeting, entries: [entry] } })
  return entry.id
}

function codeIn(body: unknown): string {
  return (body as { readonly code: string }).code
}

/** Everything the store holds of a team, as text, but when its devices were last seen; and the server's clock. */
export function rowsOf(bench: AppBench, team: string): string {
  const store = new Database(join(bench.house.deps.data, 'pitlamp.db'), { readonly: true })
  const tables = store.prepare(`select name from sqlite_master where type = 'table'`).pluck().all()
  const rows = (tables as string[]).map((table) => {
    const all = store.prepare(`select * from "${table}"`).all() as Record<string, unknown>[]
    const own = all.filter((row) => (table === 'team' ? row['id'] : row['team']) === team)
    return [table, own.map(({ seen_at: _seen, ...row }) => row)]
  })
  const clock = store.prepare('select shift_ms, epoch from server_time').all()
  store.close()
  return JSON.stringify([rows, clock], undefined, 1)
}
