/**
 * What a screen sees of a meeting. `meeting.svelte.ts` implements it over outbox, socket and fold;
 * a screen never knows whether a server is there.
 */
import type { DeviceReport, MeetingCopy, WallStanding } from '@pitlamp/contract'
import type { Body, Kind, Role, State } from '@pitlamp/race'

export type Connection =
  | 'live'
  /** No answer for three seconds: counting and recording go on. */
  | 'silent'
  /** This device was taken out of the team. */
  | 'revoked'

export interface ClockShown {
  /** `notSure`: figures in outline, still counting. */
  readonly standing: 'set' | 'roughly' | 'notSure'
  readonly boundMs: number
  /** The server's own clock is in doubt; what a captain may press about it. */
  readonly doubt?: {
    readonly why: 'behindItsMark' | 'devicesDiffer'
    readonly offeredShiftMs?: number
  }
}

export type Saved =
  /** Not stored anywhere yet: for the moment it takes to write it, or longer where the device cannot. */
  'onlyOnThisPage' | 'keptOnThisDevice' | 'saved' | 'refused'

/** The last press, for ten real seconds. */
export interface Undoable {
  readonly entry: string
  readonly kind: Kind
  /** On the scale of `performance.now()`. It becomes undefined by itself when this has passed. */
  readonly untilRealMs: number
}

/** An alert on show. `sounded` is false where it came too late to startle anybody. */
export interface AlertShown {
  readonly id: string
  /** The obligation's label, without a time in it; for a call its words. */
  readonly label: string
  /** What is left at this threshold; 0 is due now. Undefined for a call. */
  readonly thresholdMs: number | undefined
  readonly dueAt: number
  readonly sounded: boolean
  readonly concerns: readonly string[]
}

/** Something the person must know about what they pressed: where it was not kept, and what to do. */
export interface Trouble {
  readonly id: string
  readonly sentence: string
}

export interface WallShown {
  /** This device: undefined where the captain has not let it. */
  readonly own: WallStanding | undefined
  readonly taken: readonly { readonly device: string; readonly name: string }[]
}

export interface MeetingPort {
  readonly id: string
  readonly name: string
  readonly fictional: boolean
  /** Meeting milliseconds in a real one: 1 but for the demo. */
  readonly rate: number
  readonly role: Role
  readonly device: string
  /** Who holds this device, as they said. */
  readonly person: string | undefined
  readonly state: State
  /** Meeting time, renewed ten times a second of real time at least while visible. */
  readonly now: number
  readonly clock: ClockShown
  readonly connection: Connection
  /** Why the server does not take this screen, in one sentence. */
  readonly problem?: string
  /** Real milliseconds since the server was last heard. */
  readonly silentForMs: number
  /** Entries not yet on the server's disk. */
  readonly keptHere: number
  readonly refused: readonly { readonly entry: string; readonly sentence: string }[]
  readonly screens: readonly {
    readonly device: string
    readonly name: string
    readonly role: Role
    readonly report?: DeviceReport
  }[]
  /** The wall where crew devices may have it: what this device may do about it, and which have it. */
  readonly wall?: WallShown
  /** What another device was last called, also while it is away. */
  readonly deviceName?: (device: string) => string | undefined
  readonly undoable: Undoable | undefined

  /** Due first, weightiest first; none that has been put away. */
  readonly alerts: readonly AlertShown[]
  readonly muted: boolean
  readonly troubles: readonly Trouble[]

  /** Records what happened now. The id of the entry, made here. */
  press<K extends Kind>(kind: K, body: Body<K>): string
  /** Voids the last press within its ten seconds. */
  undo(): void
  correct(target: string, change: Body<'correction.1'>['change'], reason: string): void
  saved(entry: string): Saved
  /** Sends again what was set aside: this entry, or all of it. */
  readonly sendAgain?: (entry?: string) => void
  /** The meeting as this device has it, for a file; nothing while the code for that is not here. */
  readonly copied?: () => Promise<MeetingCopy | undefined>
  may(kind: Kind): boolean
  holdBy(person: string | undefined): void
  /** Takes an alert or a trouble off this screen; it does not come back. */
  dismiss(id: string): void
  mute(muted: boolean): void
}
