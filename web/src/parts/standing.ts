/** How this screen stands, in words: what is saved, whether the server is there, how far its clock can be trusted. */
import type { ClockShown, Connection } from '../meeting/port.ts'
import { figure } from './time.ts'

export interface Line {
  readonly connection: Connection
  readonly silentForMs: number
  readonly keptHere: number
  readonly problem?: string
}

export function savedWords(keptHere: number): string {
  return keptHere === 0 ? 'all saved' : `${keptHere} kept on this device`
}

/** Undefined while the server is there: nothing needs saying then. */
export function lineWords({ connection, silentForMs, problem }: Line): string | undefined {
  switch (connection) {
    case 'live':
      return problem
    case 'revoked':
      return problem ?? 'this device was taken out of the team'
    case 'silent': {
      const since = Number.isFinite(silentForMs) ? ` for ${figure(silentForMs)}` : ''
      return problem ?? `no server${since}: counting and recording go on`
    }
  }
}

export function clockWords({ standing, boundMs, doubt }: ClockShown): string {
  if (doubt) return 'the server’s clock is in doubt'
  switch (standing) {
    case 'set':
      return 'clock set'
    case 'roughly':
      return `clock to ± ${(Math.ceil(boundMs / 100) / 10).toFixed(1)} s`
    case 'notSure':
      return 'clock not sure'
  }
}
