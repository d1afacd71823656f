/** Opens a fictional meeting from a script, with its past already in the log, and lets the rest happen. */
import { createHash } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import { clockStandingSchema, meetingSchema, type Meeting } from '@pitlamp/contract'
import type { Entry } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'
import type { Press, Script } from './script.ts'
import { NotAnswered, type Screen } from './screen.ts'

export interface RaceOptions {
  readonly name: string
  /** Meeting seconds in a real second. */
  readonly rate: number
  /** Where on the script's clock the meeting stands when it opens: what lies before is its past. */
  readonly openAtMs: number
}

export interface OpenRace {
  readonly meeting: string
  /** Settles when the last press is saved, or when `stop` was called. */
  readonly over: Promise<void>
  readonly stop: () => void
}

const LOOK_EVERY_MS = 100
const PAST_BATCH = 40

export async function openRace(
  screen: Screen,
  script: Script,
  options: RaceOptions,
): Promise<OpenRace> {
  const meeting = await makeMeeting(screen, script, options)
  const epoch = clockStandingSchema.parse(await screen.call('GET', '/api/clock')).epoch
  const greenAt = meeting.clock.anchorMeetingMs - options.openAtMs
  const entryOf = namedEntries(screen, { greenAt, epoch })
  const past = script.presses.filter((press) => press.offsetMs <= options.openAtMs)
  const adopted = script.documents.map(({ name, content }) =>
    entryOf({
      offsetMs: past[0]?.offsetMs ?? 0,
      kind: 'adopted.1',
      body: adoption(name, content, greenAt),
    }),
  )
  await append(screen, meeting.id, [...adopted, ...past.map(entryOf)])
  const stopped = new AbortController()
  const rest = script.presses.slice(past.length).map(entryOf)
  const over = letHappen(screen, { meeting, entries: rest, signal: stopped.signal })
  return { meeting: meeting.id, over, stop: () => stopped.abort() }
}

async function makeMeeting(screen: Screen, script: Script, options: RaceOptions): Promise<Meeting> {
  const crew = script.documents.find(({ name }) => name === 'crew')?.content as {
    people: { id: string; name: string }[]
  }
  for (const { id, name } of crew.people) await screen.call('POST', '/api/people', { id, name })
  const made = await screen.call('POST', '/api/meetings', {
    id: uuidV7(),
    name: options.name,
    fictional: { rate: options.rate },
  })
  const meeting = meetingSchema.parse(made)
  for (const { name, content } of script.documents) {
    await screen.call('PUT', `/api/meetings/${meeting.id}/documents/${name}`, {
      basedOn: 0,
      content,
    })
  }
  return meeting
}

function adoption(document: string, content: unknown, greenAt: number) {
  const sha256 = createHash('sha256').update(JSON.stringify(content)).digest('hex')
  const appliesFrom = greenAt - 3_600_000
  return { document, version: 1, sha256, content, appliesFrom, as: 'change' }
}

/** Presses become entries in order; `$name` in a body becomes the id of the entry of that name. */
function namedEntries(screen: Screen, { greenAt, epoch }: { greenAt: number; epoch: number }) {
  const ids = new Map<string, string>()
  return ({ offsetMs, kind, as, body }: Press): Entry => {
    const text = JSON.stringify(body).replace(
      /"\$(\w+)"/g,
      (_, name: string) => `"${ids.get(name) ?? name}"`,
    )
    const entry = screen.entry({
      at: greenAt + offsetMs,
      epoch,
      kind,
      body: JSON.parse(text) as unknown,
    })
    if (as !== undefined) ids.set(as, entry.id)
    return entry
  }
}

interface Rest {
  readonly meeting: Meeting
  readonly entries: readonly Entry[]
  readonly signal: AbortSignal
}

async function letHappen(screen: Screen, { meeting, entries, signal }: Rest): Promise<void> {
  const { anchorServerMs, anchorMeetingMs, rate } = meeting.clock
  const startedAt = performance.now()
  const lag = Math.max(
    0,
    clockStandingSchema.parse(await screen.call('GET', '/api/clock')).serverMs - anchorServerMs,
  )
  const meetingNow = () => anchorMeetingMs + (lag + performance.now() - startedAt) * rate
  let next = 0
  while (next < entries.length && !signal.aborted) {
    const due = entries
      .slice(next)
      .filter((entry) => entry.at <= meetingNow())
      .slice(0, PAST_BATCH)
    if (due.length > 0 && (await appendIfAnswered(screen, meeting.id, due))) next += due.length
    await sleep(LOOK_EVERY_MS)
  }
}

async function append(screen: Screen, meeting: string, entries: readonly Entry[]): Promise<void> {
  for (let from = 0; from < entries.length; from += PAST_BATCH) {
    const part = entries.slice(from, from + PAST_BATCH)
    await screen.call('POST', `/api/meetings/${meeting}/entries`, { meeting, entries: part })
  }
}

/** A server that does not answer is asked again with the same entries: repeating them is harmless. */
async function appendIfAnswered(
  screen: Screen,
  meeting: string,
  due: readonly Entry[],
): Promise<boolean> {
  try {
    await append(screen, meeting, due)
    return true
  } catch (error) {
    if (error instanceof NotAnswered || error instanceof TypeError) return false
    throw error
  }
}
