/** One kind of rule: its parts, and the schema of a rule made of them. */
import * as z from 'zod/mini'
import type { Part } from './parts.ts'
import { rule } from './shape.ts'

export type Parts = Readonly<Record<string, Part>>

export function ruleKind<K extends string, P extends Parts>(kind: K, parts: P) {
  const shape = Object.fromEntries(Object.entries(parts).map(([name, part]) => [name, part.schema]))
  return { kind, parts, schema: rule(kind, z.strictObject(shape as Shape<P>)) } as const
}

type Shape<P extends Parts> = { readonly [N in keyof P]: P[N]['schema'] }
