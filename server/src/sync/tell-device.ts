/** A device is something else now: its sockets hear it, and are cut off where it was taken out. */
import type { Device, RoleSaid } from '@pitlamp/contract'
import { roleIn, wallIn } from '../access/role-in.ts'
import type { Room } from './sockets.ts'

type Told = Pick<Room, 'io' | 'presence'>

export function deviceRoom(team: string, device: string): string {
  return `device ${team}/${device}`
}

export function tellDevice({ io, presence }: Told, team: string, device: Device): void {
  const revoked = device.revokedAt !== undefined
  for (const socket of io.sockets.sockets.values()) {
    const { holder, meeting } = socket.data
    if (holder.device.id !== device.id || holder.team.id !== team) continue
    socket.data.holder = { ...holder, device }
    socket.emit('role', revoked ? { role: 'revoked' } : roleSaid(device, meeting))
    if (meeting !== undefined) presence.changed(meeting)
  }
  if (revoked) io.in(deviceRoom(team, device.id)).disconnectSockets(true)
}

/** Only where a socket of it goes by something else: whoever looks sees the same change more than once. */
export function tellIfNews(room: Told, team: string, device: Device): void {
  const sockets = [...room.io.sockets.sockets.values()].map(({ data }) => data.holder)
  const own = sockets.filter((holder) => holder.device.id === device.id && holder.team.id === team)
  if (own.some((holder) => standingOf(holder.device) !== standingOf(device))) {
    tellDevice(room, team, device)
  }
}

function standingOf({ name, role, revokedAt, wall }: Device): string {
  return JSON.stringify([name, role, revokedAt !== undefined, wall?.meeting, wall?.takenAt])
}

function roleSaid(device: Device, meeting: string | undefined): RoleSaid {
  if (meeting === undefined) return { role: device.role }
  const wall = wallIn(device, meeting)
  return { role: roleIn(device, meeting), ...(wall && { wall }) }
}
