/** Every socket event by name and direction, for both ends. */
import type { Append, Appended } from './append.ts'
import type { ClockStanding } from './clock.ts'
import type { Hello, Welcome } from './hello.ts'
import type { Presence } from './presence.ts'
import type { Probe, ProbeAnswer } from './probe.ts'
import type { Push } from './push.ts'
import type { DeviceReport } from './report.ts'
import type { RoleSaid } from './role.ts'
import type { Problem } from '../problem.ts'

/** An answer is what was asked for or a problem, told apart by its key. */
export type Answer<T> = { readonly ok: T } | { readonly problem: Problem }

export interface ScreenToServer {
  readonly hello: (message: Hello, answer: (answer: Answer<Welcome>) => void) => void
  readonly append: (message: Append, answer: (answer: Answer<Appended>) => void) => void
  readonly probe: (message: Probe, answer: (answer: ProbeAnswer) => void) => void
  /** Not answered: what is lost is said again with the next change or connection. */
  readonly report: (message: DeviceReport) => void
}

export interface ServerToScreen {
  readonly push: (message: Push) => void
  readonly clock: (message: ClockStanding) => void
  readonly presence: (message: Presence) => void
  /** The captain changed what this device may do; revoked devices are disconnected after it. */
  readonly role: (message: RoleSaid) => void
}
