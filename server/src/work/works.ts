/** Work for teams, each in a thread of its own that ends with it. */
import { availableParallelism } from 'node:os'
import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Worker } from 'node:worker_threads'
import type { WorkLine } from '@pitlamp/contract'
import type { RecordedEntry } from '@pitlamp/race'
import type { FromSolver, SolverSettings, ToSolver, WorkInput } from './messages.ts'
import { startThread } from '../start-thread.ts'
import { Queue } from './queue.ts'

export interface Asked {
  readonly team: string
  readonly work: WorkInput
  /** The meeting's log, page by page. */
  readonly pages: () => AsyncIterable<readonly RecordedEntry[]>
  readonly say: (line: WorkLine) => void
}

export interface Begun {
  readonly done: Promise<void>
  /** Ends it within a second, whatever the solver is at. */
  readonly cancel: () => void
}

/** The solver looks at the cancel many times a second; a thread that does not end by itself is ended. */
const PATIENCE_MS = 300
const SOLVER = { name: 'solver-thread', source: 'work/solver-thread', external: 'highs' } as const
const OUR_FAULT: WorkLine = {
  ...{ kind: 'notDone', why: 'ourFault' },
  sentences: ['Something went wrong while it was worked out. The plan is as it was.'],
}

export class Works {
  /** One core is left for everybody's clocks. */
  readonly #queue = new Queue(Math.max(1, availableParallelism() - 1))

  begin(asked: Asked): Begun {
    const cancelled = new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)
    const { turn, leave } = this.#queue.enter(asked.team)
    let end: () => void = () => undefined
    const done = new Promise<void>((resolve, reject) => {
      end = resolve
      void turn.then((giveTurn) => {
        end = () => undefined
        run(asked, cancelled)
          .then(({ gone }) => {
            resolve()
            return gone
          })
          .catch(reject)
          .finally(giveTurn)
      })
    })
    asked.say({ kind: 'waiting' })
    return {
      done,
      cancel: () => {
        Atomics.store(new Int32Array(cancelled), 0, 1)
        leave()
        end()
      },
    }
  }
}

function isSet(cancelled: SharedArrayBuffer): boolean {
  return Atomics.load(new Int32Array(cancelled), 0) === 1
}

/** `gone`: the thread, which takes longer than its work. */
async function run(
  { work, pages, say }: Asked,
  cancelled: SharedArrayBuffer,
): Promise<{ readonly gone: Promise<unknown> }> {
  const settings: SolverSettings = { cancelled }
  const thread = await startThread(SOLVER, settings)
  const ended = untilDone(thread, { say, isCancelled: () => isSet(cancelled) })
  const send = (message: ToSolver) => thread.postMessage(message)
  try {
    // A store that answers at once would hold everybody up from here to the last page.
    await nextTurn()
    for await (const page of pages()) {
      send({ page })
      await nextTurn()
    }
    send({ work })
    await ended
  } catch (error) {
    await thread.terminate()
    throw error
  }
  return { gone: thread.terminate() }
}

interface Listening {
  readonly say: (line: WorkLine) => void
  readonly isCancelled: () => boolean
}

async function untilDone(thread: Worker, { say, isCancelled }: Listening): Promise<void> {
  let watch: NodeJS.Timeout | undefined
  let cancelledFor = 0
  await new Promise<void>((resolve) => {
    let isDone = false
    const fail = () => {
      if (!isDone && !isCancelled()) say(OUR_FAULT)
      resolve()
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
      } else if (!isCancelled()) say(message.line)
    })
    thread.on('error', fail)
    thread.on('exit', fail)
  })
  clearInterval(watch)
}
