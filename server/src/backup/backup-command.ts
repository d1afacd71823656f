/** `npm run backup -- FILE`: a copy of the whole store, beside a running server or without one. */
import { existsSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import type { Terminal } from '../access/captain.ts'
import { BadOption, type Config } from '../config.ts'
import { copyStore, syncFolder } from './copy.ts'
import { inspect, inWordsOf, type Holding } from './inspect.ts'
import { diskSentence, NotDone, refuseDatabase } from './not-done.ts'

export async function backUp(
  file: string | undefined,
  config: Pick<Config, 'data' | 'database'>,
  out: Terminal,
): Promise<void> {
  refuseDatabase(config, 'pg_dump --format=custom --file=FILE')
  if (file === undefined) {
    throw new BadOption('Say where the copy is to go: npm run backup -- FILE')
  }
  const store = join(config.data, 'pitlamp.db')
  if (!existsSync(store)) {
    throw new NotDone(`There is nothing to copy in ${config.data}. Is that the folder? See --data.`)
  }
  const target = resolve(file)
  refuseTaken(target)
  if (!statSync(dirname(target), { throwIfNoEntry: false })?.isDirectory()) {
    throw new NotDone(`There is no folder ${dirname(target)}. Make it first, or name another file.`)
  }
  const holding = await copyBeside(store, target)
  out.write(`${target} holds ${inWordsOf(holding)}. It was read again and is whole.\n`)
  out.write(`Put it back with: npm run restore -- ${target}\n`)
}

/** Whoever finds the file under its name finds all of it. */
async function copyBeside(store: string, target: string): Promise<Holding> {
  const part = `${target}.${String(process.pid)}.part`
  try {
    copyStore(store, part)
    const holding = await inspect(part)
    refuseTaken(target)
    renameSync(part, target)
    syncFolder(dirname(target))
    return holding
  } catch (error) {
    rmSync(part, { force: true })
    if (error instanceof NotDone) throw error
    throw new NotDone(`No copy was made. ${sentenceFor(error, { store, target })}`)
  }
}

function refuseTaken(target: string): void {
  if (!existsSync(target)) return
  throw new NotDone(
    `${target} is there already, and a backup overwrites nothing. Name another file.`,
  )
}

function sentenceFor(error: unknown, at: { store: string; target: string }): string {
  const { code = '' } = error as { readonly code?: string }
  if (/^SQLITE_(CORRUPT|NOTADB)/.test(code)) return `The store itself is damaged: ${at.store}.`
  return (
    diskSentence(error, dirname(at.target)) ??
    (error instanceof Error ? error.message : String(error))
  )
}
