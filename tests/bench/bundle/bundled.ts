/**
 * A module as browsers get it: one minified file for the browsers we build for. What runs a bench keeps the names of
 * functions, which wraps every one of them that is made in a loop, and leaves literals spread into literals, which
 * makes slow objects; the build for browsers does neither.
 */
import { build } from 'esbuild'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

/** `file` with all it imports; whoever asks says by `T` what it exports. */
export async function bundled<T>(file: string): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'pitlamp-bundle-'))
  const outfile = join(folder, 'bundle.mjs')
  try {
    await build({
      ...{ entryPoints: [file], outfile, bundle: true, format: 'esm', minify: true },
      ...{ target: 'es2022', logLevel: 'error' },
    })
    return (await import(pathToFileURL(outfile).href)) as T
  } finally {
    rmSync(folder, { recursive: true })
  }
}
