/** Builds a C file into a library that is loaded before the server. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'

const COMPILERS = [['cc'], ['gcc'], ['clang'], ['g++', '-x', 'c']] as const

export type Compiled = { readonly library: string } | { readonly reason: string }

/** The library, or why this machine cannot make one: then the test is skipped with that reason. */
export function compile(source: string): Compiled {
  if (process.platform !== 'linux')
    return { reason: 'The preloaded disk is written for Linux only.' }
  const found = COMPILERS.find(([command]) => spawnSync(command, ['--version']).status === 0)
  if (!found) return { reason: 'No C compiler here (cc, gcc, clang or g++), so no preloaded disk.' }
  const [command, ...language] = found
  const folder = mkdtempSync(join(tmpdir(), 'pitlamp-preload-'))
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }))
  const library = join(folder, `${basename(source, '.c')}.so`)
  const options = ['-O1', '-shared', '-fPIC']
  execFileSync(command, [...language, source, ...options, '-o', library])
  return { library }
}
