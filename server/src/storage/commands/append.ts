/**
 * Entries into the log. Everything that waits is taken at once: devices, meetings and known ids are read once
 * and the new rows go in by one statement, because a statement costs more than a row. `seq` is the meeting's
 * own counter, raised here and nowhere else, so that a duplicate burns no number and the log has no gaps.
 */
import { meetingTime, type AppendResult, type Refusal } from '@pitlamp/contract'
import { mayRecord, type Entry, type RecordedEntry, type Role } from '@pitlamp/race'
import { isSame } from '@pitlamp/sync'
import { roleIn } from '../../access/role-in.ts'
import { clockOf, deviceOf } from '../rows.ts'
import type { DeviceTable, MeetingTable } from '../tables.ts'
import type { Trx } from './context.ts'
import { findEntries, insertEntries, takeOut, type KnownEntry } from './entry-rows.ts'
import { devicesOf, meetingsOf, raiseLastSeq } from './append-rows.ts'
import { keepInTray } from './tray.ts'

/** Entries of one screen for one meeting, their envelopes and bodies already checked. */
export interface AppendInput {
  readonly team: string
  readonly device: string
  readonly meeting: string
  readonly entries: readonly Entry[]
  /** Server time at which they came in. */
  readonly nowMs: number
}

export interface AppendAnswer {
  /** In the order of the entries. */
  readonly results: readonly AppendResult[]
  readonly news?: {
    readonly from: number
    readonly to: number
    readonly entries: readonly RecordedEntry[]
  }
}

type RoleOf = (entry: Entry) => Role

interface OpenMeeting {
  readonly row: MeetingTable
  readonly known: Map<string, KnownEntry>
  readonly fresh: RecordedEntry[]
  lastSeq: number
}

export async function appendAll(
  trx: Trx,
  inputs: readonly AppendInput[],
): Promise<readonly AppendAnswer[]> {
  const hoped = await takeAll(trx, inputs, targetsIn)
  const { answers, meetings } = hoped.whole ? hoped : await takeAll(trx, inputs, idsIn)
  for (const open of meetings) {
    if (open.lastSeq > open.row.last_seq) await raiseLastSeq(trx, open.row.id, open.lastSeq)
  }
  for (const [index, input] of inputs.entries()) {
    if (isRevoked(answers[index])) await keepInTray(trx, input)
  }
  return answers
}

/** Entries of a device that may send nothing itself any more, put in for it with the role it had. */
export async function appendFor(
  trx: Trx,
  input: AppendInput,
  roleOf: RoleOf,
): Promise<AppendAnswer> {
  const [row] = await meetingsOf(trx, [input])
  if (row?.team !== input.team) return refuseAll(input, 'otherMeeting')
  const known = await findEntries(trx, row.id, [...new Set(input.entries.flatMap(idsIn))])
  const open: OpenMeeting = { row, known, fresh: [], lastSeq: row.last_seq }
  const answer = take(input, open, roleOf)
  await putIn(trx, open)
  if (open.lastSeq > row.last_seq) await raiseLastSeq(trx, row.id, open.lastSeq)
  return answer
}

interface Taken {
  readonly answers: readonly AppendAnswer[]
  readonly meetings: readonly OpenMeeting[]
  /** Every row went in. Otherwise an id was there that was not looked up, and nothing was left behind. */
  readonly whole: boolean
}

/**
 * Looking ids up costs as much as putting rows in, and nearly every press is new: so at first only the targets of
 * corrections are looked up, and everything only when a row met one that was there already.
 */
async function takeAll(
  trx: Trx,
  inputs: readonly AppendInput[],
  lookedUp: (entry: Entry) => readonly string[],
): Promise<Taken> {
  const rows = await meetingsOf(trx, inputs)
  // Whoever waited for a meeting reads what the devices are now.
  const devices = await devicesOf(trx, inputs)
  const meetings = new Map<string, OpenMeeting>()
  for (const row of rows) {
    const sent = inputs.flatMap(({ meeting, entries }) => (meeting === row.id ? entries : []))
    const known = await findEntries(trx, row.id, [...new Set(sent.flatMap(lookedUp))])
    meetings.set(row.id, { row, known, fresh: [], lastSeq: row.last_seq })
  }
  const answers = inputs.map((input): AppendAnswer => {
    const device = devices.get(`${input.team}/${input.device}`)
    const open = meetings.get(input.meeting)
    if (!device) return refuseAll(input, 'notJoined')
    if (device.revoked_at !== null) return refuseAll(input, 'revoked')
    if (!open || open.row.team !== input.team) return refuseAll(input, 'otherMeeting')
    const role = roleFrom(device, input.meeting)
    return take(input, open, () => role)
  })
  let whole = true
  for (const open of meetings.values()) whole &&= await putIn(trx, open)
  if (!whole) for (const { row } of meetings.values()) await takeOut(trx, row)
  return { answers, meetings: [...meetings.values()], whole }
}

async function putIn(trx: Trx, { row, fresh }: OpenMeeting): Promise<boolean> {
  return fresh.length === 0 || (await insertEntries(trx, row, fresh)) === fresh.length
}

function idsIn(entry: Entry): readonly string[] {
  return [entry.id, ...targetsIn(entry)]
}

function isRevoked(answer: AppendAnswer | undefined): boolean {
  const first = answer?.results[0]
  return first?.outcome === 'refused' && first.refusal === 'revoked'
}

/** A device that was never let to the wall, as nearly all, is what its row says. */
function roleFrom(device: DeviceTable, meeting: string): Role {
  return device.wall_meeting === null ? device.role : roleIn(deviceOf(device), meeting)
}

function take(input: AppendInput, open: OpenMeeting, roleOf: RoleOf): AppendAnswer {
  const from = open.lastSeq
  const recordedAt = meetingTime(clockOf(open.row), input.nowMs)
  const results = input.entries.map((entry): AppendResult => {
    const known = open.known.get(entry.id)
    if (known) return again(entry, known)
    const role = roleOf(entry)
    if (!allowed(role, entry, open.known)) return refuse(entry.id, 'roleMayNot')
    open.lastSeq += 1
    const recorded: RecordedEntry = { ...entry, seq: open.lastSeq, recordedAt, role }
    open.fresh.push(recorded)
    open.known.set(entry.id, recorded)
    return { outcome: 'recorded', id: entry.id, seq: recorded.seq, recordedAt, role }
  })
  if (open.lastSeq === from) return { results }
  const entries = open.fresh.slice(open.fresh.length - (open.lastSeq - from))
  return { results, news: { from, to: open.lastSeq, entries } }
}

/** The same id again: success when it is the same entry to the byte, refused when it is another. */
function again(entry: Entry, known: KnownEntry): AppendResult {
  if (!isSame(entry, known)) return refuse(entry.id, 'otherBody')
  const { seq, recordedAt, role } = known
  return { outcome: 'duplicate', id: entry.id, seq, recordedAt, role }
}

function allowed(role: Role, entry: Entry, known: ReadonlyMap<string, KnownEntry>): boolean {
  const { kind, device } = entry
  const body: unknown = kind.startsWith('correction.') ? JSON.parse(entry.body) : undefined
  return mayRecord(role, { kind, body }, (id) => known.get(id)?.device === device)
}

function targetsIn(entry: Entry): readonly string[] {
  if (!entry.kind.startsWith('correction.')) return []
  const body = JSON.parse(entry.body) as { readonly target?: unknown } | null
  return typeof body?.target === 'string' ? [body.target] : []
}

function refuseAll(input: AppendInput, refusal: Refusal): AppendAnswer {
  return { results: input.entries.map((entry) => refuse(entry.id, refusal)) }
}

function refuse(id: string, refusal: Refusal): AppendResult {
  return { outcome: 'refused', id, refusal }
}
