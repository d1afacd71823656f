/** A thread for one piece of work: it ends with it, and its memory with it. */
import loadHighs from 'highs'
import { fold, readEntry, type LogEntry } from '@pitlamp/race'
import { readlinkSync } from 'node:fs'
import { basename } from 'node:path'
import { constants, setPriority } from 'node:os'
import { parentPort, workerData } from 'node:worker_threads'
import type { FromSolver, SolverSettings, ToSolver, WorkInput } from './messages.ts'
import { workOut } from './work-out.ts'

giveWay()
const { cancelled } = workerData as SolverSettings
const flag = new Int32Array(cancelled)
const entries: LogEntry[] = []

parentPort?.on('message', (message: ToSolver) => {
  if ('page' in message) entries.push(...message.page.map(readEntry))
  else void work(message.work)
})

/** Everybody's clocks come first, where the system can tell one thread from another; elsewhere they share. */
function giveWay(): void {
  try {
    setPriority(
      Number(basename(readlinkSync('/proc/thread-self'))),
      constants.priority.PRIORITY_LOW,
    )
  } catch {
    // Without it the work is done all the same.
  }
}

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
