/** Teams, codes and devices. */
import type { Device, Refusal } from '@pitlamp/contract'
import { ROLES, type Role } from '@pitlamp/race'
import { alone, held } from '../is-postgres.ts'
import { deviceOf } from '../rows.ts'
import type { DeviceTable, InviteTable } from '../tables.ts'
import type { Done, Trx } from './context.ts'

export type Refused = { readonly refused: Refusal; readonly detail?: string }

/** The first start makes the first team. */
export async function foundTeam(
  trx: Trx,
  input: { readonly id: string; readonly name: string; readonly nowMs: number },
): Promise<{ readonly team: string }> {
  await alone(trx)
  const first = await trx.selectFrom('team').select('id').orderBy('created_at').executeTakeFirst()
  if (first) return { team: first.id }
  const created_at = Math.round(input.nowMs)
  await trx.insertInto('team').values({ id: input.id, name: input.name, created_at }).execute()
  return { team: input.id }
}

export interface InviteInput {
  readonly team: string
  readonly codeHash: string
  readonly role: Role
  readonly kind: InviteTable['kind']
  readonly validUntil: number
  readonly nowMs: number
}

/** A day after its end nobody asks for a code any more. */
const FORGOTTEN_AFTER_MS = 86_400_000

export async function makeInvite(trx: Trx, input: InviteInput): Promise<Done> {
  await trx
    .deleteFrom('invite')
    .where('valid_until', '<', Math.round(input.nowMs) - FORGOTTEN_AFTER_MS)
    .execute()
  await trx
    .insertInto('invite')
    .values({
      team: input.team,
      code_hash: input.codeHash,
      role: input.role,
      kind: input.kind,
      valid_until: Math.round(input.validUntil),
      used_at: null,
    })
    .execute()
  return 'done'
}

export interface JoinInput {
  readonly codeHash: string
  readonly device: string
  readonly name: string
  readonly tokenHash: string
  /** Hash of the token the device came with, where it came with one. */
  readonly cameWithHash?: string
  /** The operator's ticket behind this code, where there is one: see `access/tickets.ts`. */
  readonly ticket?: Ticket
  readonly nowMs: number
}

export interface Ticket {
  readonly team: string
  /** Stands for the team of this name; `team` is then its id only if it has to be founded. */
  readonly teamName?: string
  readonly role: Role
  readonly validUntil: number
  readonly simulator: boolean
  /** Worthless once a captain's device exists. */
  readonly onlyWithoutCaptain: boolean
}

export interface Joined {
  readonly device: Device
  readonly team: { readonly id: string; readonly name: string }
}

/**
 * A device joins by a code. One that joins again keeps its id, gets a new token and never a lower role; it
 * must come with its old token, or whoever holds a code could take the place of any device.
 */
export async function join(
  trx: Trx,
  input: JoinInput,
): Promise<{ readonly joined: Joined } | Refused> {
  const invite = await inviteFor(trx, input)
  if (!invite) return { refused: 'codeUnknown' }
  const before = await held(trx, trx.selectFrom('device').selectAll())
    .where('team', '=', invite.team)
    .where('id', '=', input.device)
    .executeTakeFirst()
  if (before && before.token_hash !== input.cameWithHash) {
    return { refused: 'otherDevice', detail: 'A device with this id has already joined.' }
  }
  const row = deviceRow({ input, invite, before })
  await trx
    .insertInto('device')
    .values(row)
    .onConflict((conflict) =>
      conflict.columns(['team', 'id']).doUpdateSet({
        name: row.name,
        role: row.role,
        token_hash: row.token_hash,
        revoked_at: null,
        wall_meeting: row.wall_meeting,
        wall_taken_at: row.wall_taken_at,
      }),
    )
    .execute()
  const team = await trx
    .selectFrom('team')
    .select(['id', 'name'])
    .where('id', '=', invite.team)
    .executeTakeFirstOrThrow()
  return { joined: { device: deviceOf(row), team } }
}

interface Found {
  readonly team: string
  readonly role: Role
  readonly simulator: boolean
}

function deviceRow(from: {
  readonly input: JoinInput
  readonly invite: Found
  readonly before: DeviceTable | undefined
}): DeviceTable {
  const { input, invite, before } = from
  const stayed = before?.revoked_at === null ? before : undefined
  const kept = stayed?.role ?? 'viewer'
  return {
    team: invite.team,
    id: input.device,
    name: input.name,
    role: ROLES[Math.max(ROLES.indexOf(kept), ROLES.indexOf(invite.role))] ?? invite.role,
    token_hash: input.tokenHash,
    simulator: invite.simulator ? 1 : 0,
    joined_at: before?.joined_at ?? Math.round(input.nowMs),
    seen_at: before?.seen_at ?? null,
    revoked_at: null,
    wall_meeting: stayed?.wall_meeting ?? null,
    wall_taken_at: stayed?.wall_taken_at ?? null,
    changed_at: before?.changed_at ?? null,
  }
}

async function inviteFor(trx: Trx, input: JoinInput): Promise<Found | undefined> {
  const invite = await held(trx, trx.selectFrom('invite').selectAll())
    .where('code_hash', '=', input.codeHash)
    .executeTakeFirst()
  if (input.ticket) return invite ? undefined : punchTicket(trx, input, input.ticket)
  if (!invite || invite.used_at !== null || invite.valid_until < input.nowMs) return undefined
  if (invite.kind === 'typed') {
    await trx
      .updateTable('invite')
      .set({ used_at: Math.round(input.nowMs) })
      .where('code_hash', '=', input.codeHash)
      .execute()
  }
  return { team: invite.team, role: invite.role, simulator: false }
}

async function punchTicket(trx: Trx, input: JoinInput, ticket: Ticket): Promise<Found | undefined> {
  await alone(trx)
  if (ticket.onlyWithoutCaptain && (await captains(trx, ticket.team)) > 0) return undefined
  const team = await teamOf(trx, ticket, input.nowMs)
  await trx
    .insertInto('invite')
    .values({
      team,
      code_hash: input.codeHash,
      role: ticket.role,
      kind: 'ticket',
      valid_until: Math.round(ticket.validUntil),
      used_at: Math.round(input.nowMs),
    })
    .execute()
  return { ...ticket, team }
}

async function teamOf(trx: Trx, { team, teamName }: Ticket, nowMs: number): Promise<string> {
  if (teamName === undefined) return team
  const named = trx.selectFrom('team').select('id').where('name', '=', teamName)
  const found = await named.orderBy('created_at').executeTakeFirst()
  if (found) return found.id
  const row = { id: team, name: teamName, created_at: Math.round(nowMs) }
  await trx.insertInto('team').values(row).execute()
  return team
}

async function captains(trx: Trx, team: string): Promise<number> {
  const { found } = await trx
    .selectFrom('device')
    .select((select) => select.fn.countAll<number>().as('found'))
    .where('team', '=', team)
    .where('role', '=', 'captain')
    .where('simulator', '=', 0)
    .where('revoked_at', 'is', null)
    .executeTakeFirstOrThrow()
  return found
}
