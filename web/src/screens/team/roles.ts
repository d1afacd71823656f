import type { Role } from '@pitlamp/race'

/** A role as people say it, and what a device with it may do. */
export const ROLE_WORDS: Readonly<Record<Role, { readonly name: string; readonly may: string }>> = {
  pitWall: { name: 'Pit wall', may: 'records everything of the race and sets right any entry' },
  crew: { name: 'Crew', may: 'notes incidents and faults, answers calls, hands over' },
  viewer: { name: 'Viewer', may: 'sees everything, records nothing' },
  captain: { name: 'Captain', may: 'everything, and who is in the team' },
}

export const ROLES_IN_ORDER = [
  'pitWall',
  'crew',
  'viewer',
  'captain',
] as const satisfies readonly Role[]
