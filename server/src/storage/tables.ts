/**
 * The tables, the same in every database. Times are whole milliseconds (server time unless the column
 * says otherwise), truth values 0 or 1, JSON is text. Every row but `team` has its team; the tables from
 * `server_time` on belong to the installation, not to a team.
 */
import type { DocumentName, Role } from '@pitlamp/race'

export interface Tables {
  team: TeamTable
  person: PersonTable
  device: DeviceTable
  invite: InviteTable
  meeting: MeetingTable
  document: DocumentTable
  document_version: DocumentVersionTable
  plan_link: PlanLinkTable
  entry: EntryTable
  tray: TrayTable
  lap: LapTable
  blob: BlobTable
  server_time: ServerTimeTable
  probe: ProbeTable
  process: ProcessTable
  presence: PresenceTable
  ticket: TicketTable
  tries: TriesTable
}

export interface TeamTable {
  id: string
  name: string
  created_at: number
}

export interface PersonTable {
  team: string
  id: string
  name: string
}

export interface DeviceTable {
  team: string
  /** Made by the device itself, once. */
  id: string
  name: string
  role: Role
  /** SHA-256 of the token in its cookie, hex. */
  token_hash: string
  /** 1 for the simulator's own device: it does not count as a captain's. */
  simulator: number
  joined_at: number
  seen_at: number | null
  revoked_at: number | null
  /** The meeting in which this crew device may take the wall, and server time since when it has it. */
  wall_meeting: string | null
  wall_taken_at: number | null
  /** When a captain, or the wall, last changed it. */
  changed_at: number | null
}

export interface InviteTable {
  team: string
  /** SHA-256 of the code, hex. The code itself is written nowhere. */
  code_hash: string
  role: Role
  kind: 'qr' | 'typed' | 'ticket'
  valid_until: number
  /** For codes that work once. */
  used_at: number | null
}

export interface MeetingTable {
  id: string
  team: string
  name: string
  /** Two cars at one event are two meetings that share it. */
  event: string | null
  fictional: number
  clock_anchor_server_ms: number
  clock_anchor_meeting_ms: number
  clock_rate: number
  created_at: number
  /** The meeting's own counter: `seq` of the last entry. */
  last_seq: number
}

/** The draft of a document: one row a document, its version rising. */
export interface DocumentTable {
  team: string
  meeting: string
  document: DocumentName
  version: number
  content: string
  saved_at: number
  saved_by: string
}

/** The newest version of a draft and those before it that are kept: see `commands/drafts.ts`. */
export interface DocumentVersionTable extends DocumentTable {
  /** When the first of the saves was made that this version stands for. */
  begun_at: number
}

export interface PlanLinkTable {
  team: string
  meeting: string
  /** SHA-256 of the code, hex. */
  code_hash: string
  made_at: number
  revoked_at: number | null
}

export interface EntryTable {
  team: string
  meeting: string
  seq: number
  id: string
  v: number
  device: string
  n: number
  person: string | null
  /** Meeting time. */
  at: number
  at_bound_ms: number
  epoch: number
  kind: string
  /** Exactly the text that was sent. */
  body: string
  /** Meeting time. */
  recorded_at: number
  role: Role
}

/** Entries of a revoked device: the captain decides. */
export interface TrayTable {
  team: string
  meeting: string
  id: string
  device: string
  /** The whole entry as JSON. */
  entry: string
  received_at: number
  /** That the device had in this meeting when it was taken out. */
  role: Role
  decided: 'takenIn' | 'leftAside' | null
  decided_at: number | null
}

/** Lap passings, append-only. `variant` tells apart what a source says twice under one key. */
export interface LapTable {
  team: string
  meeting: string
  lap_seq: number
  source: string
  run: string
  car: string
  n: number
  variant: number
  time_ms: number
  /** Meeting time. */
  at: number
  recorded_at: number
}

export interface BlobTable {
  team: string
  sha256: string
  media_type: string
  bytes: number
  received_bytes: number
  content: Buffer
  created_at: number
}

/** One row: see `time/server-time.ts` for what it means. */
export interface ServerTimeTable {
  id: number
  mark_ms: number
  shift_ms: number
  epoch: number
  /** How far the running processes are ahead of the database's clock. */
  ahead_ms: number | null
}

/** Written and emptied to learn whether the disk takes anything again. */
export interface ProbeTable {
  filler: string
}

/** A process that serves screens, while it says so. */
export interface ProcessTable {
  id: string
  seen_at: number
}

/** The screens of one meeting that one process serves, as JSON. */
export interface PresenceTable {
  process: string
  meeting: string
  screens: string
  told_at: number
}

/** The operator's tickets, where the processes share no folder: see `access/tickets.ts`. */
export interface TicketTable {
  code_hash: string
  ticket: string
  valid_until: number
}

/** Wrong codes by address, SHA-256 of it, hex. */
export interface TriesTable {
  address_hash: string
  wrong: number
  waits_until: number
}
