/** A thread for one piece of work: it ends with it, and its memory with it. */
import loadHighs from 'highs'
import { fold, readEntry, type LogEntry } from '@pitlamp/race'
import { parentPort, workerData } from 'node:worker_threads'
import type { FromSolver, SolverSettings, ToSolver, WorkInput } from './messages.ts'
import { workOut } from './work-out.ts'

const { cancelled } = workerData as SolverSettings
const flag = new Int32Array(cancelled)
const entries: LogEntry[] = []

parentPort?.on('message', (message: ToSolver) => {
  if ('page' in message) entries.push(...message.page.map(readEntry))
  else void work(message.work)
})

async function work({ asked, now, drafts }: WorkInput): Promise<void> {
  const solver = await loadHighs()
  const meant = { recorded: fold(entries), now, drafts }
  workOut(meant, asked, {
    solver,
    shouldStop: () => Atomics.load(flag, 0) === 1,
    say: (line) => tell({ line }),
  })
  tell({ done: true })
}

function tell(message: FromSolver): void {
  parentPort?.postMessage(message)
}
