/** A thread for one piece of work: it ends with it, and its memory with it. */
import loadHighs, { type Highs } from 'highs'
import { fold, readEntry, type LogEntry } from '@pitlamp/race'
import { readlinkSync } from 'node:fs'
import { basename } from 'node:path'
import { constants, setPriority } from 'node:os'
import { parentPort, workerData } from 'node:worker_threads'
import { openReader, type Reader } from '../storage/reader.ts'
import { wholeLog } from '../storage/reads/whole-log.ts'
import type { FromSolver, SolverSettings, WorkInput } from './messages.ts'
import { compileSolver } from './solver-program.ts'
import { workOut } from './work-out.ts'

giveWay()
const { cancelled, store, program, work } = workerData as SolverSettings
const flag = new Int32Array(cancelled)
/** Held until the thread is gone: see the writer's. */
const held: Reader[] = []

void workItOut(work)

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

async function workItOut({ meeting, asked, now, drafts }: WorkInput): Promise<void> {
  const [solver, entries] = await Promise.all([loadSolver(), logOf(meeting)])
  const meant = { recorded: fold(entries), now, drafts }
  workOut(meant, asked, {
    solver,
    shouldStop: () => Atomics.load(flag, 0) === 1,
    say: (line) => tell({ line: JSON.stringify(line) }),
  })
  tell({ done: true })
}

async function loadSolver(): Promise<Highs> {
  const wasmModule = program ?? (await compileSolver())
  if (!program) tell({ program: wasmModule })
  return loadHighs({ wasmModule })
}

async function logOf(meeting: string): Promise<readonly LogEntry[]> {
  const reader = await openReader(store)
  held.push(reader)
  const entries = await wholeLog(reader.read, meeting)
  await reader.close()
  return entries.map(readEntry)
}

function tell(message: FromSolver): void {
  parentPort?.postMessage(message)
}
