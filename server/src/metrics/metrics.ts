/** What the rooms of the server tell of themselves as they work. Never a team, a person, a device or a meeting. */
import type { AppendResult, Refusal } from '@pitlamp/contract'

/** What was refused: a request, a message of a screen, or an entry in it. */
export type RefusedWhat = 'request' | 'message' | 'entry'

/** How the process stands at the moment it is asked. */
export interface Standing {
  readonly openSockets: number
  /** Devices that joined and were not taken out, of all teams. */
  readonly devices: number
  /** Whether the store takes entries. */
  readonly writing: boolean
  readonly clockInDoubt: boolean
}

export interface Metrics {
  /** A batch was answered, this long after it came in. */
  readonly appended: (results: readonly AppendResult[], tookMs: number) => void
  readonly refused: (what: RefusedWhat, refusal: Refusal) => void
  /** Entries were told to the screens of a meeting, this long after some process took in the last of them. */
  readonly told: (lagMs: number) => void
  /** Prometheus' text format, version 0.0.4. */
  readonly text: (standing: Standing) => Promise<{ readonly type: string; readonly text: string }>
}

/** Where nobody may ask, nothing is counted. */
export const NOT_MEASURED: Pick<Metrics, 'appended' | 'refused' | 'told'> = {
  appended: () => undefined,
  refused: () => undefined,
  told: () => undefined,
}
