/** Starts a thread of ours: from its bundle where the server is built, else bundled on the spot from the sources. */
import { Worker } from 'node:worker_threads'
import type * as Esbuild from 'esbuild'

export interface Thread {
  /** Its file in the built server, without its ending. */
  readonly name: string
  /** Below this folder, without its ending. */
  readonly source: string
  /** Packages that read files of their own, and so are not bundled. */
  readonly external: readonly string[]
}

export async function startThread(thread: Thread, settings: unknown): Promise<Worker> {
  const fromSources = import.meta.url.endsWith('.ts')
  return fromSources
    ? new Worker(await bundled(thread), { eval: true, workerData: settings })
    : new Worker(new URL(`./${thread.name}.js`, import.meta.url), { workerData: settings })
}

const bundles = new Map<string, Promise<string>>()

function bundled(thread: Thread): Promise<string> {
  const bundle = bundles.get(thread.name) ?? makeBundle(thread)
  bundles.set(thread.name, bundle)
  return bundle
}

/** A thread does not inherit what runs TypeScript here (tsx, vitest), and starts faster from one file anyway. */
async function makeBundle({ source, external }: Thread): Promise<string> {
  // Named apart from the import, so that the built server does not carry the builder.
  const builder = 'esbuild'
  const { build } = (await import(builder)) as typeof Esbuild
  const made = await build({
    entryPoints: [new URL(`./${source}.ts`, import.meta.url).pathname],
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    external: [...external],
    banner: {
      js: `globalThis.require = require('node:module').createRequire(${JSON.stringify(import.meta.url)})`,
    },
  })
  return made.outputFiles[0]?.text ?? ''
}
