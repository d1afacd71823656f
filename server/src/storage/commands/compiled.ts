/**
 * Compiling a statement costs Kysely as much as running it costs SQLite. What runs for every press is compiled
 * once a shape and size, with its values put in afterwards. Lists are padded to the next power of two, so
 * that there are few sizes.
 */
import type { CompiledQuery } from 'kysely'
import type { Trx } from './context.ts'

type Compile = (trx: Trx, size: number) => CompiledQuery

/** `compile` for this size, remembered for each database; the parameters of the answer are the caller's to replace. */
export function bySize(compile: Compile): Compile {
  const made = new WeakMap<object, Map<number, CompiledQuery>>()
  return (trx, size) => {
    const { adapter } = trx.getExecutor()
    const sizes = made.get(adapter) ?? new Map<number, CompiledQuery>()
    made.set(adapter, sizes)
    const compiled = sizes.get(size) ?? compile(trx, size)
    sizes.set(size, compiled)
    return compiled
  }
}

export function withParameters(
  query: CompiledQuery,
  parameters: readonly unknown[],
): CompiledQuery {
  return { ...query, parameters }
}

/** The list with its last value repeated up to the next power of two. It must not be empty. */
export function padded<T>(list: readonly T[]): readonly T[] {
  const size = 2 ** Math.ceil(Math.log2(list.length))
  const last = list.at(-1) as T
  return [...list, ...Array<T>(size - list.length).fill(last)]
}

export function parts<T>(list: readonly T[], size: number): readonly (readonly T[])[] {
  const cut: (readonly T[])[] = []
  for (let start = 0; start < list.length; start += size) cut.push(list.slice(start, start + size))
  return cut
}
