/** A folder of `seeds/` read and checked: the documents a fictional meeting adopts, and what was pressed when. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as z from 'zod/mini'
import { documentSchemas, type DocumentName } from '@pitlamp/race'

const pressSchema = z.strictObject({
  at: z.string().check(z.regex(/^-?\d+:\d{2}:\d{2}$/)),
  kind: z.string(),
  /** A name by which later lines point to this entry: `$name`. */
  as: z.optional(z.string()),
  body: z.record(z.string(), z.unknown()),
})

export interface Press {
  /** Counted from the first green. */
  readonly offsetMs: number
  readonly kind: string
  readonly as?: string | undefined
  readonly body: Readonly<Record<string, unknown>>
}

export interface Script {
  readonly documents: readonly { readonly name: DocumentName; readonly content: unknown }[]
  readonly presses: readonly Press[]
}

const ADOPTED_AT_GREEN = ['rules', 'crew', 'car', 'plan'] as const

/** Throws with file and line where a seed does not fit: seeds are ours, so that is a bug. */
export function readScript(folder: string): Script {
  const documents = ADOPTED_AT_GREEN.map((name) => ({
    name,
    content: documentSchemas[name].parse(JSON.parse(read(folder, `${name}.json`))),
  }))
  const presses = read(folder, 'race.jsonl')
    .split('\n')
    .filter((line) => line !== '')
    .map((line, index) => readPress(line, index + 1))
  return { documents, presses }
}

function readPress(line: string, lineNumber: number): Press {
  const parsed = pressSchema.safeParse(JSON.parse(line))
  if (!parsed.success) throw new Error(`race.jsonl, line ${lineNumber}: ${parsed.error.message}`)
  const { at, ...press } = parsed.data
  return { ...press, offsetMs: offsetMs(at) }
}

/** `-0:05:00` → −300,000. */
export function offsetMs(text: string): number {
  const [hours = 0, minutes = 0, seconds = 0] = text.replace('-', '').split(':').map(Number)
  return (text.startsWith('-') ? -1000 : 1000) * (hours * 3600 + minutes * 60 + seconds)
}

function read(folder: string, file: string): string {
  return readFileSync(join(folder, file), 'utf8')
}
