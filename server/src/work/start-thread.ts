/** Starts a solver thread: from its bundle where the server is built, else bundled on the spot from the sources. */
import { Worker } from 'node:worker_threads'
import type * as Esbuild from 'esbuild'
import type { SolverSettings } from './messages.ts'

export async function startSolverThread(settings: SolverSettings): Promise<Worker> {
  const fromSources = import.meta.url.endsWith('.ts')
  return fromSources
    ? new Worker(await bundled(), { eval: true, workerData: settings })
    : new Worker(new URL('./solver-thread.js', import.meta.url), { workerData: settings })
}

let bundle: Promise<string> | undefined

function bundled(): Promise<string> {
  bundle ??= makeBundle()
  return bundle
}

async function makeBundle(): Promise<string> {
  // Named apart from the import, so that the built server does not carry the builder.
  const builder = 'esbuild'
  const { build } = (await import(builder)) as typeof Esbuild
  const made = await build({
    entryPoints: [new URL('./solver-thread.ts', import.meta.url).pathname],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    // It reads its compiled solver from beside itself.
    external: ['highs'],
    banner: {
      js: `globalThis.require = require('node:module').createRequire(${JSON.stringify(import.meta.url)})`,
    },
  })
  return made.outputFiles[0]?.text ?? ''
}
