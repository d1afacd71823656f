import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../..', import.meta.url))
const cache = join(root, '.cache')

/** Every file below the given paths of the repository, as `server/src/main.ts`, in order. */
export function filesBelow(paths) {
  return paths.flatMap((path) => {
    const entries = directory(path)
    if (entries === null) return existsSync(join(root, path)) ? [path] : []
    return filesBelow(entries.map((name) => `${path}/${name}`))
  })
}

function directory(path) {
  if (basename(path) === 'node_modules') return []
  try {
    return readdirSync(join(root, path)).sort()
  } catch {
    return null
  }
}

/** The same for the same names with the same contents (and the same further words). */
export function fingerprint(files, ...words) {
  const hash = createHash('sha256').update(words.join('\0'))
  for (const file of files) hash.update(`\0${file}\0`).update(readFileSync(join(root, file)))
  return hash.digest('hex')
}

export function contentsOf(file) {
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined
}

/** An empty folder in which to prepare what is to replace another; leftovers of dead starts go. */
export function freshStage(purpose) {
  const stages = join(cache, purpose)
  mkdirSync(stages, { recursive: true })
  for (const name of readdirSync(stages)) {
    if (!isRunning(Number(name))) rmSync(join(stages, name), { recursive: true, force: true })
  }
  const stage = join(stages, String(process.pid))
  mkdirSync(stage)
  return stage
}

function isRunning(pid) {
  try {
    return process.kill(pid, 0)
  } catch {
    return false
  }
}

const asideOf = (live) => join(cache, 'previous', live.slice(root.length).replaceAll(/[\\/]/g, '-'))

/** Puts a prepared folder in the place of a living one, which is kept until the new one stands. */
export function swapIn(staged, live) {
  const aside = asideOf(live)
  mkdirSync(dirname(aside), { recursive: true })
  rmSync(aside, { recursive: true, force: true })
  if (existsSync(live)) renameSync(live, aside)
  if (existsSync(staged)) renameSync(staged, live)
  rmSync(aside, { recursive: true, force: true })
}

/** Undoes a swap that was cut off half-way. */
export function recover(live) {
  if (!existsSync(live) && existsSync(asideOf(live))) renameSync(asideOf(live), live)
}
