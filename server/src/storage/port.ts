/**
 * What the rest of the server sees of a database. Commands go through one writer and are answered once they
 * are on the disk; reads see what was answered. A refusal is a value in the answer; `NotSaved` is thrown when
 * the disk does not take anything; any other error is a fault of ours.
 */
import type { RecordedEntry } from '@pitlamp/race'
import type { Answers, CommandName, Inputs } from './commands/index.ts'
import type { KeptTime } from './commands/server-time.ts'
import type { Where } from './reader.ts'
import type { Reads } from './reads/index.ts'
import type { Clocks } from '../time/server-time.ts'

export interface Storage {
  readonly run: <N extends CommandName>(name: N, input: Inputs[N]) => Promise<Answers[N]>
  readonly read: Reads
  /** For a thread that reads by itself. */
  readonly where: Where
  /** Called once a transaction and meeting, after the commit, in the order of the log. */
  readonly onNews: (listener: (news: News) => void) => void
  readonly standing: () => StorageStanding
  /** Answers what is waiting, then lets go of the file. */
  readonly close: () => Promise<void>
  /** The processes beside this one over the same database. A file has none. */
  readonly neighbours?: Neighbours
}

/** What the processes over one database say to each other, besides the log. Every word may be lost. */
export interface Neighbours {
  /** This process, for as long as it lives. */
  readonly process: string
  readonly say: (word: Word) => void
  /** Never called with what this process said itself. */
  readonly onWord: (listener: (word: Word) => void) => void
  /** The database's clock as this process reckons it; server time goes by it. */
  readonly clocks: Clocks
  /** How far off that reckoning may be. */
  readonly boundMs: () => number
  /** Looks at the database's clock once more, and at what is kept of server time. */
  readonly look: () => Promise<KeptTime | undefined>
}

/** A hint: what it is about is in the database. `missed`: hints were lost, and everything is to be looked at. */
export type Word =
  | { readonly say: 'device' }
  | { readonly say: 'clock' }
  | { readonly say: 'presence'; readonly meeting: string }
  | { readonly say: 'missed' }

/**
 * The log is the bus: meeting `meeting` has come to `to`. Where `from` is `to` another process wrote it and more
 * than could be said: there are no entries, they are read.
 */
export interface News {
  readonly meeting: string
  readonly from: number
  readonly to: number
  readonly entries: readonly RecordedEntry[]
}

export interface StorageStanding {
  readonly writing: boolean
  /** What the disk said, while it takes nothing. */
  readonly why?: string
}

/** The disk is full, read-only or failing: nothing was written and nothing is acknowledged. */
export class NotSaved extends Error {
  readonly why: string

  constructor(why: string) {
    super(`Nothing can be written: ${why}`)
    this.name = 'NotSaved'
    this.why = why
  }
}

/** The same of a database that cannot be reached, or does not take anything. */
export class OutOfReach extends NotSaved {}

/** Another process has this store open. */
export class StoreInUse extends Error {
  constructor(where: string) {
    super(
      `Another Pitlamp is already running on ${where}. Stop it first, or give this one a folder of its own with --data.`,
    )
    this.name = 'StoreInUse'
  }
}
