/**
 * Takes everything that waits, writes it, answers in order, and takes what has come meanwhile. While the
 * database is out of reach, commands are refused at once and a probe asks every two seconds.
 */
import type { Kysely } from 'kysely'
import type { CommandName, Inputs } from '../commands/index.ts'
import type { Answered } from '../news.ts'
import { OutOfReach, type StorageStanding } from '../port.ts'
import type { Tables } from '../tables.ts'
import { transact, type Result } from './transact.ts'

const PROBE_EVERY_MS = 2_000

interface Waiting {
  readonly name: CommandName
  readonly input: unknown
  readonly resolve: (answer: unknown) => void
  readonly reject: (error: Error) => void
}

export class PostgresWriter {
  readonly #db: Kysely<Tables>
  readonly #onCommit: (answered: readonly Answered[]) => void
  #waiting: Waiting[] = []
  #busy = false
  #idle: (() => void) | undefined
  #ailing: string | undefined
  #probe: NodeJS.Timeout | undefined

  /** `onCommit` is called with the answers of one batch, before the promises settle. */
  constructor(db: Kysely<Tables>, onCommit: (answered: readonly Answered[]) => void) {
    this.#db = db
    this.#onCommit = onCommit
  }

  standing(): StorageStanding {
    return this.#ailing === undefined ? { writing: true } : { writing: false, why: this.#ailing }
  }

  async run<N extends CommandName>(name: N, input: Inputs[N]): Promise<unknown> {
    if (this.#ailing !== undefined) throw new OutOfReach(this.#ailing)
    return new Promise((resolve, reject) => {
      this.#waiting.push({ name, input, resolve, reject })
      if (this.#busy) return
      this.#busy = true
      setImmediate(() => void this.#work())
    })
  }

  /** What is waiting is answered first. */
  async close(): Promise<void> {
    clearInterval(this.#probe)
    if (this.#busy) await new Promise<void>((resolve) => (this.#idle = resolve))
    await this.#db.destroy()
  }

  async #work(): Promise<void> {
    while (this.#waiting.length > 0) {
      const batch = this.#waiting
      this.#waiting = []
      this.#settle(batch, await transact(this.#db, batch))
    }
    this.#busy = false
    this.#idle?.()
  }

  #settle(batch: readonly Waiting[], results: readonly Result[]): void {
    const answered: Answered[] = []
    for (const [index, { name, input, resolve, reject }] of batch.entries()) {
      const result = results[index]
      if (result === undefined) reject(new Error('Every command has its result.'))
      else if ('answer' in result) {
        answered.push({ name, input, answer: result.answer })
        resolve(result.answer)
      } else if ('notSaved' in result) {
        this.#ail(result.notSaved)
        reject(new OutOfReach(result.notSaved))
      } else reject(new Error(result.fault))
    }
    if (answered.length > 0) this.#onCommit(answered)
  }

  #ail(why: string): void {
    this.#ailing = why
    this.#probe ??= setInterval(() => void this.#tryAgain(), PROBE_EVERY_MS).unref()
  }

  async #tryAgain(): Promise<void> {
    const filled = await transact(this.#db, [{ name: 'fillProbe', input: {} }])
    const emptied = await transact(this.#db, [{ name: 'emptyProbe', input: {} }])
    if (![...filled, ...emptied].every((result) => 'answer' in result)) return
    clearInterval(this.#probe)
    this.#probe = undefined
    this.#ailing = undefined
  }
}
