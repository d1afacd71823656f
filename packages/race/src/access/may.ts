/**
 * Who may do what: role × action × kind. The server's guard and every outbox read this one table, so that an
 * offline phone never records what will be refused.
 */
import type { Role } from '../entry/envelope.ts'

export type CaptainsAction =
  | 'invite'
  | 'manageDevices'
  | 'saveDraft'
  | 'sharePlan'
  | 'settleClock'
  | 'makeMeeting'
  | 'openDemo'

export type Action =
  | { readonly do: 'record'; readonly kind: string }
  | { readonly do: 'correct'; readonly own: boolean }
  | { readonly do: CaptainsAction | 'read' | 'takeWall' | 'takeBackWall' | 'workOut' }

type Corrections = 'none' | 'own' | 'any'

interface Permissions {
  /** By the name of the kind, whatever its shape number; kinds a build does not know are race kinds. */
  readonly records: (name: string) => boolean
  readonly corrects: Corrections
  readonly leads: boolean
  /**
   * `takes`: may take the wall where the captain has let this device, and give it back. `keeps`: takes it back
   * from a device that has it.
   */
  readonly wall: 'none' | 'takes' | 'keeps'
}

const CREW_KINDS: readonly string[] = [
  'incident',
  'faultNoted',
  'note',
  'photograph',
  'answer',
  'handover',
]

const TABLE: Readonly<Record<Role, Permissions>> = {
  viewer: { records: () => false, corrects: 'none', leads: false, wall: 'none' },
  crew: {
    records: (name) => CREW_KINDS.includes(name),
    corrects: 'own',
    leads: false,
    wall: 'takes',
  },
  pitWall: {
    records: (name) => name !== 'adopted',
    corrects: 'any',
    leads: false,
    wall: 'keeps',
  },
  captain: { records: () => true, corrects: 'any', leads: true, wall: 'keeps' },
}

export function may(role: Role, action: Action): boolean {
  const { records, corrects, leads, wall } = TABLE[role]
  switch (action.do) {
    case 'read':
      return true
    case 'record':
      return isCorrection(action.kind) ? corrects !== 'none' : records(nameOf(action.kind))
    case 'correct':
      return corrects === 'any' || (corrects === 'own' && action.own)
    case 'takeWall':
      return wall === 'takes'
    case 'takeBackWall':
    case 'workOut':
      return wall === 'keeps'
    case 'invite':
    case 'manageDevices':
    case 'saveDraft':
    case 'sharePlan':
    case 'settleClock':
    case 'makeMeeting':
    case 'openDemo':
      return leads
  }
}

/** The same table for one entry: a correction is judged by whether its target is the device's own. */
export function mayRecord(
  role: Role,
  entry: { readonly kind: string; readonly body?: unknown },
  ownTargets: (id: string) => boolean,
): boolean {
  if (!isCorrection(entry.kind)) return may(role, { do: 'record', kind: entry.kind })
  const target = targetOf(entry.body)
  return may(role, { do: 'correct', own: target !== undefined && ownTargets(target) })
}

function nameOf(kind: string): string {
  return kind.slice(0, kind.lastIndexOf('.'))
}

function isCorrection(kind: string): boolean {
  return nameOf(kind) === 'correction'
}

/** A body may be JSON text as it crosses the wire, or already read. */
function targetOf(body: unknown): string | undefined {
  const read = typeof body === 'string' ? parse(body) : body
  if (typeof read !== 'object' || read === null || !('target' in read)) return undefined
  return typeof read.target === 'string' ? read.target : undefined
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text) as unknown
  } catch {
    return undefined
  }
}
