/** The solver's program, compiled. Kept by whoever starts threads: each of its own begins with code not optimized yet. */
import { readFile } from 'node:fs/promises'

/** Node's types name what WebAssembly makes, and not what makes it. */
interface Compiler {
  readonly compile: (program: Uint8Array) => Promise<WebAssembly.Module>
}
const { WebAssembly: compiler } = globalThis as unknown as { readonly WebAssembly: Compiler }

export async function compileSolver(): Promise<WebAssembly.Module> {
  return compiler.compile(await readFile(require.resolve('highs/runtime')))
}
