/** Entries on their way in, from a socket or over HTTP: each is checked for itself, the good ones go to the writer. */
import {
  BATCH_LIMIT_BYTES,
  problem,
  type Answer,
  type Append,
  type Appended,
  type AppendResult,
  type Refusal,
} from '@pitlamp/contract'
import { entrySchema, type Entry } from '@pitlamp/race'
import type { Deps } from '../deps.ts'
import { NotSaved } from '../storage/port.ts'
import type { Holder } from '../storage/reads/access.ts'
import { faultIn } from './entry-faults.ts'

type Checked = { readonly entry: Entry } | { readonly result: AppendResult }

type Given = Pick<Deps, 'storage' | 'time' | 'measured'>

export async function takeEntries(
  deps: Given,
  holder: Holder,
  append: Append,
): Promise<Answer<Appended>> {
  const startedAt = performance.now()
  const answer = await take(deps, holder, append)
  if ('ok' in answer) {
    deps.measured?.metrics.appended(answer.ok.results, performance.now() - startedAt)
  }
  return answer
}

async function take(
  { storage, time }: Given,
  holder: Holder,
  { meeting, entries }: Append,
): Promise<Answer<Appended>> {
  if (isTooMuch(entries)) return { problem: problem('batchTooLarge') }
  const checked = entries.map((entry) => check(entry, holder.device.id))
  const good = checked.flatMap((one) => ('entry' in one ? [one.entry] : []))
  if (good.length === 0) return { ok: { results: resultsOf(checked, []) } }
  try {
    const { results } = await storage.run('append', {
      team: holder.team.id,
      device: holder.device.id,
      meeting,
      entries: good,
      nowMs: time.now(),
    })
    return { ok: { results: resultsOf(checked, results) } }
  } catch (error) {
    if (error instanceof NotSaved) return { problem: problem('notSaved') }
    throw error
  }
}

/** In the order of the entries: refused here, or as the writer answered. */
function resultsOf(checked: readonly Checked[], answered: readonly AppendResult[]): AppendResult[] {
  const rest = [...answered].reverse()
  return checked.map((one) => {
    const result = 'result' in one ? one.result : rest.pop()
    if (!result) throw new Error('The writer answers every entry.')
    return result
  })
}

function check(given: unknown, device: string): Checked {
  const parsed = entrySchema.safeParse(given)
  if (!parsed.success) return refuse(idOf(given), 'malformed', envelopeWords(parsed.error.issues))
  const entry = parsed.data
  if (entry.device !== device) return refuse(entry.id, 'otherDevice')
  const fault = faultIn(entry)
  if (fault) return refuse(entry.id, fault.refusal, fault.detail)
  return { entry }
}

function refuse(id: string | null, refusal: Refusal, detail?: string): Checked {
  return { result: { outcome: 'refused', id, refusal, ...(detail !== undefined && { detail }) } }
}

function idOf(given: unknown): string | null {
  const { id } = (given ?? {}) as { readonly id?: unknown }
  return typeof id === 'string' && id.length <= 60 ? id : null
}

interface Issue {
  readonly path: readonly PropertyKey[]
  readonly message: string
}

function envelopeWords([first]: readonly Issue[]): string {
  const where = first?.path.map(String).join('.') ?? ''
  return where === '' ? 'This is no entry.' : `${where}: ${first?.message ?? ''}`
}

/** A single entry is judged by its own limit, a batch by its length on the wire. */
function isTooMuch(entries: readonly unknown[]): boolean {
  if (entries.length < 2 || longestPossible(entries) <= BATCH_LIMIT_BYTES) return false
  return Buffer.byteLength(JSON.stringify(entries)) > BATCH_LIMIT_BYTES
}

const ENVELOPE_BYTES = 600
/** JSON writes one character with at most six bytes. */
const BYTES_A_CHARACTER = 6

/** A cheap upper bound, so that ordinary batches are not written out a second time; anything odd is. */
function longestPossible(entries: readonly unknown[]): number {
  let bytes = 0
  for (const entry of entries) {
    const { body } = (entry ?? {}) as { readonly body?: unknown }
    bytes += typeof body === 'string' ? ENVELOPE_BYTES + body.length * BYTES_A_CHARACTER : Infinity
  }
  return bytes
}
