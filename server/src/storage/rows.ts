/** Rows as the contract names them. */
import type { Device, Draft, Meeting, MeetingClock } from '@pitlamp/contract'
import type { DocumentName, RecordedEntry } from '@pitlamp/race'
import type { DeviceTable, DocumentTable, EntryTable, MeetingTable } from './tables.ts'

export function clockOf(row: MeetingTable): MeetingClock {
  return {
    anchorServerMs: row.clock_anchor_server_ms,
    anchorMeetingMs: row.clock_anchor_meeting_ms,
    rate: row.clock_rate,
  }
}

export function meetingOf(row: MeetingTable): Meeting {
  return {
    id: row.id,
    name: row.name,
    fictional: row.fictional === 1,
    clock: clockOf(row),
    createdAt: row.created_at,
    lastSeq: row.last_seq,
  }
}

export function entryOf(row: EntryTable): RecordedEntry {
  return {
    v: 1,
    id: row.id,
    device: row.device,
    n: row.n,
    ...(row.person === null ? {} : { person: row.person }),
    at: row.at,
    atBoundMs: row.at_bound_ms,
    epoch: row.epoch,
    kind: row.kind,
    body: row.body,
    seq: row.seq,
    recordedAt: row.recorded_at,
    role: row.role,
  }
}

export function deviceOf(row: DeviceTable): Device {
  return {
    id: row.id,
    name: row.name,
    role: row.role,
    joinedAt: row.joined_at,
    ...(row.seen_at === null ? {} : { seenAt: row.seen_at }),
    ...(row.revoked_at === null ? {} : { revokedAt: row.revoked_at }),
    ...(row.wall_meeting === null ? {} : { wall: wallOf(row.wall_meeting, row.wall_taken_at) }),
  }
}

function wallOf(meeting: string, takenAt: number | null): Device['wall'] {
  return takenAt === null ? { meeting } : { meeting, takenAt }
}

export function draftOf(document: DocumentName, row: DocumentTable | undefined): Draft {
  if (!row) return { document, version: 0 }
  const content: unknown = JSON.parse(row.content)
  return { document, version: row.version, content, savedAt: row.saved_at }
}
