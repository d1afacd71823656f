/**
 * What the rest of the server sees of a database. Commands go through one writer and are answered once they
 * are on the disk; reads see what was answered. A refusal is a value in the answer; `NotSaved` is thrown when
 * the disk does not take anything; any other error is a fault of ours.
 */
import type { RecordedEntry } from '@pitlamp/race'
import type { Answers, CommandName, Inputs } from './commands/index.ts'
import type { Reads } from './reads/index.ts'

export interface Storage {
  readonly run: <N extends CommandName>(name: N, input: Inputs[N]) => Promise<Answers[N]>
  readonly read: Reads
  /** Called once a transaction and meeting, after the commit, in the order of the log. */
  readonly onNews: (listener: (news: News) => void) => void
  readonly standing: () => StorageStanding
  /** Answers what is waiting, then lets go of the file. */
  readonly close: () => Promise<void>
}

/** The log is the bus: meeting `meeting` has come to `to`. Where another process wrote it, the entries are read. */
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
  constructor(why: string) {
    super(`Nothing can be written: ${why}`)
    this.name = 'NotSaved'
  }
}

/** Another process has this store open. */
export class StoreInUse extends Error {
  constructor(where: string) {
    super(
      `Another Pitlamp is already running on ${where}. Stop it first, or give this one a folder of its own with --data.`,
    )
    this.name = 'StoreInUse'
  }
}
