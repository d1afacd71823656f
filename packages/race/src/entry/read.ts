/** An entry whose body has been parsed, brought to today's shape, and is safe to fold. */
import type { Entry, RecordedEntry, Role } from './envelope.ts'
import { documentSchemas } from '../documents/index.ts'
import { upcast } from '../log/upcast/index.ts'
import { kinds, knownKind, type Body, type Kind } from './kinds/index.ts'

interface Envelope {
  readonly id: string
  readonly device: string
  readonly n: number
  readonly person?: string
  readonly at: number
  readonly atBoundMs: number
  readonly epoch: number
  /** The three below are absent while the entry is only kept on the device that made it. */
  readonly seq?: number
  readonly recordedAt?: number
  readonly role?: Role
}

export interface EntryOf<K extends Kind> extends Envelope {
  readonly kind: K
  readonly body: Body<K>
}
export type ReadEntry = { [K in Kind]: EntryOf<K> }[Kind]

/** Kept and forwarded, but nothing this build can fold. */
export interface UnreadEntry extends Envelope {
  readonly kind: string
  readonly unread: 'unknownKind' | 'malformed'
  readonly why?: string
}

export type LogEntry = ReadEntry | UnreadEntry

export function isUnread(entry: LogEntry): entry is UnreadEntry {
  return 'unread' in entry
}

/** Parse once, where an entry arrives; fold as often as needed. Never throws. */
export function readEntry(entry: Entry | RecordedEntry): LogEntry {
  const parsed = parseJson(entry.body)
  if (parsed === undefined) return unread(entry, 'malformed', 'The body is not JSON.')
  const today = upcast(entry.kind, parsed.value)
  const kind = knownKind(today.kind)
  if (!kind) return unread(entry, 'unknownKind')
  const why = bodyProblem(kind, today.body)
  if (why !== undefined) return unread(entry, 'malformed', why)
  return { ...envelopeOf(entry), kind, body: today.body } as ReadEntry
}

/**
 * Written out, so that all entries share a few hidden classes: copying the rest of an object gives each its
 * own, and every look at one in the fold is then ten times as dear.
 */
function envelopeOf(entry: Entry | RecordedEntry): Envelope {
  const { id, n, at, atBoundMs, epoch } = entry
  const made = { id, device: shared(entry.device), n, at, atBoundMs, epoch }
  const claimed = entry.person === undefined ? made : { ...made, person: shared(entry.person) }
  if (!('seq' in entry)) return claimed
  return { ...claimed, seq: entry.seq, recordedAt: entry.recordedAt, role: entry.role }
}

/**
 * The same text, but one copy of it for all entries: engines keep names of properties once. Thousands of
 * entries name a handful of devices, and telling two apart is then a look at two addresses.
 */
function shared(text: string): string {
  const [name = text] = Object.keys({ [text]: 0 })
  return name
}

function unread(
  entry: Entry | RecordedEntry,
  unread: UnreadEntry['unread'],
  why?: string,
): UnreadEntry {
  const kept = { ...envelopeOf(entry), kind: entry.kind, unread }
  return why === undefined ? kept : { ...kept, why }
}

/** What is wrong with a body of a known kind, in one sentence; undefined where nothing is. */
export function bodyProblem(kind: Kind, body: unknown): string | undefined {
  const result = kinds[kind].safeParse(body)
  if (!result.success) return sentence(result.error.issues)
  if (kind !== 'adopted.1') return undefined
  const adopted = result.data as Body<'adopted.1'>
  const content = documentSchemas[adopted.document].safeParse(adopted.content)
  return content.success ? undefined : sentence(content.error.issues)
}

interface Issue {
  readonly path: readonly PropertyKey[]
  readonly message: string
}

function sentence(issues: readonly Issue[]): string {
  const first = issues[0]
  if (!first) return 'The body does not fit its kind.'
  const where = first.path.map(String).join('.')
  return where === '' ? `The body: ${first.message}` : `${where}: ${first.message}`
}

function parseJson(text: string): { readonly value: unknown } | undefined {
  try {
    return { value: JSON.parse(text) as unknown }
  } catch {
    return undefined
  }
}
