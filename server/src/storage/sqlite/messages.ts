/**
 * What the main thread and the writer thread say to each other, as JSON text: for many small objects that is
 * several times cheaper than the structured clone.
 */
import type { Command } from '../commands/index.ts'

/** Given to the thread at its start. */
export interface WriterSettings {
  readonly file: string
  /** FULL, always; NORMAL exists for the test that shows the power cut test can fail. */
  readonly synchronous: 'FULL' | 'NORMAL'
  /** Only for the test of a full disk. */
  readonly maxPages?: number
}

export interface Asked extends Command {
  readonly ask: number
}

export type ToWriter =
  | {
      readonly say: 'asked'
      readonly asked: readonly Asked[]
      readonly markMs: number
      readonly epoch: number
    }
  | { readonly say: 'close' }

export type FromWriter =
  | { readonly say: 'ready' }
  | { readonly say: 'answered'; readonly outcomes: readonly Outcome[] }
  | { readonly say: 'closed' }

export type Outcome =
  | { readonly ask: number; readonly answer: unknown }
  | { readonly ask: number; readonly notSaved: string }
  | { readonly ask: number; readonly fault: string }
