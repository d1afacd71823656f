/** What every room of the server is given. Made once, in `open-house.ts`. */
import type { DemoOf } from '@pitlamp/contract'
import type { Names } from './access/origin.ts'
import type { TicketBox } from './access/ticket-box.ts'
import type { CountsTries } from './access/tries.ts'
import type { Authority } from './https/authority.ts'
import type { LogSettings } from './logging.ts'
import type { Metrics } from './metrics/metrics.ts'
import type { Storage } from './storage/port.ts'
import type { ServerTime } from './time/server-time.ts'

export interface Deps {
  readonly storage: Storage
  readonly time: ServerTime
  /** The team whose captain the operator may let in. */
  readonly team: string
  /** The data folder. */
  readonly data: string
  /** Where the built screens lie. */
  readonly web: string
  readonly names: Names
  readonly tries: CountsTries
  readonly tickets: TicketBox
  readonly trustProxy?: string
  readonly log: LogSettings
  /** What is counted, and the token of whoever may read it. */
  readonly measured?: { readonly metrics: Metrics; readonly token: string }
  /** Addresses at which devices reach this server, the likeliest first; known once it listens. */
  readonly addresses: () => readonly string[]
  /** Where this very process finds itself. */
  readonly ownAddress: () => string
  readonly openDemo?: OpenDemo
  /** Where the server also listens over TLS. */
  readonly authority?: Authority
}

/** Opens the demo through the public interface, joining with `code` as a captain's device of its own. */
export type OpenDemo = (at: {
  readonly baseUrl: string
  readonly code: string
  readonly rate: number
  readonly of: DemoOf
}) => Promise<{ readonly meeting: string; readonly stop?: () => void }>
