/** Builds the screens and the server beside what is there, and swaps both in when they are whole. */
import { existsSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import {
  contentsOf,
  filesBelow,
  fingerprint,
  freshStage,
  recover,
  root,
  swapIn,
} from './folders.mjs'

/** Each becomes a file of its own in build/server: threads and commands are started by file. */
const entries = {
  main: 'server/src/main.ts',
  'writer-thread': 'server/src/storage/writer-thread.ts',
  'solver-thread': 'server/src/work/solver-thread.ts',
  simulate: 'server/src/simulator/main.ts',
}
const sources = ['packages', 'server/src', 'server/start/build.mjs', 'web', 'package-lock.json']

const built = join(root, 'build')

/** `upToDate` says whether the packages to build with are those that the lock file names. */
export async function ensureBuilt(upToDate) {
  recover(built)
  const files = filesBelow(sources).filter((file) => !/\.(test\.ts|md)$/.test(file))
  const stamp = fingerprint(files)
  if (contentsOf(join(built, 'stamp')) === stamp) return
  console.error('Building …')
  const stage = freshStage('build')
  try {
    await Promise.all([buildWeb(join(stage, 'web')), buildServer(join(stage, 'server'))])
    writeFileSync(join(stage, 'stamp'), stamp)
    swapIn(stage, built)
  } catch (error) {
    rmSync(stage, { recursive: true, force: true })
    if (upToDate || !existsSync(join(built, 'server'))) throw error
    console.error(error)
    console.error(
      'Could not build with the packages that are here. Starting what was built before.',
    )
  }
}

async function buildWeb(outDir) {
  const { build } = await import('vite')
  // How long each plugin took is of no use to somebody who starts a server on a slow laptop.
  const rolldownOptions = { checks: { bundlerTimings: false } }
  await build({
    root: join(root, 'web'),
    logLevel: 'warn',
    build: { outDir, emptyOutDir: true, rolldownOptions },
  })
}

async function buildServer(outdir) {
  const { build } = await import('esbuild')
  await build({
    absWorkingDir: root,
    entryPoints: entries,
    outdir,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    sourcemap: true,
    // What is imported later lies apart, and names stay: a start reads a third, and its traces can be read.
    splitting: true,
    minifyWhitespace: true,
    minifySyntax: true,
    // A compiled addon cannot be bundled, and the solver reads what it is compiled to; the others are tried and done
    // without.
    external: ['better-sqlite3', 'highs', 'bufferutil', 'utf-8-validate', 'pg-native'],
    banner: {
      js: "import { createRequire as requireOf } from 'node:module'; const require = requireOf(import.meta.url);",
    },
    logLevel: 'warning',
  })
}
