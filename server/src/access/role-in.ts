/** What a device is in one meeting: its role, and the wall where the captain let it and it has taken it. */
import type { Device, WallStanding } from '@pitlamp/contract'
import type { Role } from '@pitlamp/race'

type Standing = Pick<Device, 'role' | 'wall'>

export function wallIn({ role, wall }: Standing, meeting: string): WallStanding | undefined {
  if (role !== 'crew' || wall?.meeting !== meeting) return undefined
  return wall.takenAt === undefined ? 'mayTake' : 'taken'
}

/** A crew device that has taken the wall of this meeting is the wall there, and crew everywhere else. */
export function roleIn(device: Standing, meeting: string): Role {
  return wallIn(device, meeting) === 'taken' ? 'pitWall' : device.role
}
