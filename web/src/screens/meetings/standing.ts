/** Where a meeting stands, from its folded log: what is next, what is running, what is done. */
import { phaseOf, type State } from '@pitlamp/race'
import type { Role } from '@pitlamp/race'
import type { MeetingScreen } from '../../routes.ts'

export type Group = 'running' | 'next' | 'done'
export interface Standing {
  readonly group: Group
  readonly words: string
}

export function standingOf(state: State): Standing {
  const phase = phaseOf(state)
  const segment = phase.segment && `segment ${phase.segment.index + 1} of ${phase.segment.of}`
  switch (phase.phase) {
    case 'beforeStart':
      return { group: 'next', words: 'not begun' }
    case 'green':
      return { group: 'running', words: `green, ${segment ?? 'running'}` }
    case 'powerOff':
      return { group: 'running', words: `power off, ${segment ?? 'running'}` }
    case 'between':
      return { group: 'running', words: 'between segments' }
    case 'finished':
      return { group: 'done', words: 'done' }
  }
}

/** Where a press on a meeting leads whoever presses it. */
export function firstScreen(role: Role, group: Group): MeetingScreen {
  if (group === 'next' && role === 'captain') return 'rules'
  if (group === 'done') return 'log'
  return role === 'crew' ? 'driver' : 'wall'
}
