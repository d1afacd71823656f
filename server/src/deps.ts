/** What every room of the server is given. Made once, in `open-house.ts`. */
import type { Names } from './access/origin.ts'
import type { Tries } from './access/tries.ts'
import type { Authority } from './https/authority.ts'
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
  readonly tries: Tries
  readonly trustProxy?: string
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
}) => Promise<{ readonly meeting: string; readonly stop?: () => void }>
