/** Work for teams, each in a thread of its own that ends with it. */
import { availableParallelism } from 'node:os'
import type { Worker } from 'node:worker_threads'
import type { WorkLine } from '@pitlamp/contract'
import type { FromSolver, SolverSettings, WorkInput } from './messages.ts'
import { startThread } from '../start-thread.ts'
import type { Where } from '../storage/reader.ts'
import { Queue } from './queue.ts'

export interface Asked {
  readonly team: string
  readonly work: WorkInput
  /** One `WorkLine` as JSON text. */
  readonly say: (line: string) => void
}

export interface Begun {
  readonly done: Promise<void>
  /** Ends it within a second, whatever the solver is at. */
  readonly cancel: () => void
}

/** The solver looks at the cancel many times a second; a thread that does not end by itself is ended. */
const PATIENCE_MS = 300
const SOLVER = {
  name: 'solver-thread',
  source: 'work/solver-thread',
  external: ['highs', 'better-sqlite3', 'pg-native'],
} as const
const WAITING: WorkLine = { kind: 'waiting' }
const OUR_FAULT: WorkLine = {
  ...{ kind: 'notDone', why: 'ourFault' },
  sentences: ['Something went wrong while it was worked out. The plan is as it was.'],
}

export class Works {
  readonly #store: Where
  /** One core is left for everybody's clocks. */
  readonly #queue = new Queue(Math.max(1, availableParallelism() - 1))
  /** The solver's, from the first thread on: what was made fast in one is fast in the next. */
  #program: WebAssembly.Module | undefined

  constructor(store: Where) {
    this.#store = store
  }

  begin(asked: Asked): Begun {
    const cancelled = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)
    const { turn, leave } = this.#queue.enter(asked.team)
    let end: () => void = () => undefined
    const done = new Promise<void>((resolve, reject) => {
      end = resolve
      void turn.then((giveTurn) => {
        end = () => undefined
        this.#run(asked, cancelled)
          .then(({ gone }) => {
            resolve()
            return gone
          })
          .catch(reject)
          .finally(giveTurn)
      })
    })
    asked.say(JSON.stringify(WAITING))
    return {
      done,
      cancel: () => {
        Atomics.store(new Int32Array(cancelled), 0, 1)
        leave()
        end()
      },
    }
  }

  /** `gone`: the thread, which takes longer than its work. */
  async #run(
    { work, say }: Asked,
    cancelled: SharedArrayBuffer,
  ): Promise<{ readonly gone: Promise<unknown> }> {
    const settings: SolverSettings = {
      ...{ cancelled, store: this.#store, program: this.#program, work },
    }
    const thread = await startThread(SOLVER, settings)
    const flag = new Int32Array(cancelled)
    try {
      await untilDone(thread, {
        say,
        keep: (program) => (this.#program = program),
        isCancelled: () => Atomics.load(flag, 0) === 1,
      })
    } catch (error) {
      await thread.terminate()
      throw error
    }
    return { gone: thread.terminate() }
  }
}

interface Listening {
  readonly say: (line: string) => void
  readonly keep: (program: WebAssembly.Module) => void
  readonly isCancelled: () => boolean
}

async function untilDone(thread: Worker, { say, keep, isCancelled }: Listening): Promise<void> {
  let watch: NodeJS.Timeout | undefined
  let cancelledFor = 0
  await new Promise<void>((resolve, reject) => {
    let isDone = false
    const fail = (why: Error | number) => {
      if (isDone || isCancelled()) {
        resolve()
        return
      }
      say(JSON.stringify(OUR_FAULT))
      reject(why instanceof Error ? why : new Error(`The solver’s thread ended with ${why}.`))
    }
    watch = setInterval(() => {
      if (!isCancelled()) return
      cancelledFor += 100
      if (cancelledFor >= PATIENCE_MS) resolve()
    }, 100)
    thread.on('message', (message: FromSolver) => {
      if ('done' in message) {
        isDone = true
        resolve()
      } else if ('program' in message) keep(message.program)
      else if (!isCancelled()) say(message.line)
    })
    thread.on('error', fail)
    thread.on('exit', fail)
  }).finally(() => clearInterval(watch))
}
