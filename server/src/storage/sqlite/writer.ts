/**
 * The main thread's end of the writer: hands commands over, once a turn of the loop, and settles their
 * promises in order. While the disk takes nothing, commands are refused at once and a probe asks every two
 * seconds whether it does again.
 */
import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Worker } from 'node:worker_threads'
import type { CommandName, Inputs } from '../commands/index.ts'
import type { Answered } from '../news.ts'
import { NotSaved, type StorageStanding } from '../port.ts'
import type { Asked, FromWriter, Outcome, ToWriter } from './messages.ts'

const PROBE_EVERY_MS = 2_000

export interface Mark {
  readonly markMs: number
  readonly epoch: number
}

interface Waiting {
  readonly resolve: (answer: unknown) => void
  readonly reject: (error: Error) => void
}

/** Called with the answers of one transaction, before the promises settle. */
export type OnCommit = (answered: readonly Answered[]) => void

export class Writer {
  readonly #thread: Worker
  readonly #mark: () => Mark
  readonly #onCommit: OnCommit
  readonly #asked = new Map<number, Asked & Waiting>()
  #next = 1
  #outbox: Asked[] = []
  #ailing: string | undefined
  #probe: NodeJS.Timeout | undefined
  #closed: (() => void) | undefined
  #dead = false

  constructor(parts: { thread: Worker; mark: () => Mark; onCommit: OnCommit }) {
    this.#thread = parts.thread
    this.#mark = parts.mark
    this.#onCommit = parts.onCommit
    this.#thread.on('message', (text: string) => this.#hear(JSON.parse(text) as FromWriter))
    this.#thread.on('error', (error) => this.#die(error.message))
    this.#thread.on('exit', () => this.#die('The writer has ended.'))
  }

  standing(): StorageStanding {
    return this.#ailing === undefined ? { writing: true } : { writing: false, why: this.#ailing }
  }

  async run<N extends CommandName>(name: N, input: Inputs[N]): Promise<unknown> {
    if (this.#ailing !== undefined) throw new NotSaved(this.#ailing)
    return this.#ask(name, input)
  }

  async close(): Promise<void> {
    clearInterval(this.#probe)
    if (this.#dead) return
    const closed = new Promise<void>((resolve) => (this.#closed = resolve))
    await nextTurn()
    this.#say({ say: 'close' })
    await closed
    await this.#thread.terminate()
  }

  #ask(name: CommandName, input: unknown): Promise<unknown> {
    return new Promise((resolve, reject) => {
      const asked = { ask: this.#next++, name, input }
      this.#asked.set(asked.ask, { ...asked, resolve, reject })
      this.#outbox.push(asked)
      if (this.#outbox.length === 1) setImmediate(() => this.#handOver())
    })
  }

  #handOver(): void {
    this.#say({ say: 'asked', asked: this.#outbox, ...this.#mark() })
    this.#outbox = []
  }

  #say(message: ToWriter): void {
    this.#thread.postMessage(JSON.stringify(message))
  }

  #hear(message: FromWriter): void {
    if (message.say === 'closed') this.#closed?.()
    if (message.say === 'answered') this.#settle(message.outcomes)
  }

  #settle(outcomes: readonly Outcome[]): void {
    const answered: Answered[] = []
    for (const outcome of outcomes) {
      const asked = this.#asked.get(outcome.ask)
      if (!asked) continue
      this.#asked.delete(outcome.ask)
      if ('answer' in outcome) {
        answered.push({ name: asked.name, input: asked.input, answer: outcome.answer })
        asked.resolve(outcome.answer)
      } else if ('notSaved' in outcome) {
        this.#ail(outcome.notSaved)
        asked.reject(new NotSaved(outcome.notSaved))
      } else asked.reject(new Error(outcome.fault))
    }
    if (answered.length > 0) this.#onCommit(answered)
  }

  #ail(why: string): void {
    this.#ailing = why
    this.#probe ??= setInterval(() => void this.#tryAgain(), PROBE_EVERY_MS).unref()
  }

  async #tryAgain(): Promise<void> {
    try {
      await this.#ask('fillProbe', {})
      await this.#ask('emptyProbe', {})
    } catch {
      return
    }
    clearInterval(this.#probe)
    this.#probe = undefined
    this.#ailing = undefined
  }

  /** A writer that is gone does not come back: whoever runs the process has to see it. */
  #die(why: string): void {
    clearInterval(this.#probe)
    this.#dead = true
    this.#ailing = why
    for (const asked of this.#asked.values()) asked.reject(new NotSaved(why))
    this.#asked.clear()
    this.#closed?.()
  }
}
