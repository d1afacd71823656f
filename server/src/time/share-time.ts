/**
 * Server time where several processes go by one database. Its machine's clock is the clock, each process reckons
 * it for itself, and `aheadMs` in the database says how far ahead of it all of them are: what the captain set,
 * and what came about because somebody moved that clock while they ran and they did not follow.
 *
 * - A process that starts beside others takes their time over. One that starts alone starts as over a file.
 * - Once a second, and whenever another says that the clock was set, it looks: a later epoch, or another `aheadMs`
 *   than its own, is taken over. Whoever finds the mark old raises it, for all of them.
 * - Where the database's clock was moved, each notices it for itself, goes on as before and says how far ahead it
 *   now is; whoever says so last is right, since they all say the same to within their bounds.
 */
import type { FastifyBaseLogger } from 'fastify'
import type { KeptTime } from '../storage/commands/server-time.ts'
import type { Neighbours, Storage } from '../storage/port.ts'
import { ServerTime } from './server-time.ts'

const EVERY_MS = 1_000
/** Running processes raise the mark every second. */
const SOMEBODY_RUNS_WITHIN_MS = 10_000
/** Further apart than what is reckoned of one clock in two ways. */
const APART_MS = 200

export async function startSharedTime(
  storage: Pick<Storage, 'run'>,
  { clocks, look }: Neighbours,
): Promise<ServerTime> {
  const kept = await look()
  const time = new ServerTime(clocks, kept)
  if (kept?.aheadMs !== undefined && isRunningElsewhere(kept, clocks.wall() + kept.aheadMs)) {
    time.adopt(kept)
  } else await storage.run('keepTime', time.kept())
  return time
}

function isRunningElsewhere({ markMs }: KeptTime, nowMs: number): boolean {
  return Math.abs(nowMs - markMs) < SOMEBODY_RUNS_WITHIN_MS
}

interface Shared {
  readonly time: ServerTime
  readonly storage: Pick<Storage, 'run'>
  readonly neighbours: Pick<Neighbours, 'look'>
  readonly log: Pick<FastifyBaseLogger, 'warn'>
  /** Screens are told how the clock stands now. */
  readonly tellClock: () => void
}

export function shareTime(
  parts: Shared & { readonly storage: Storage; readonly neighbours: Neighbours },
): { readonly stop: () => void } {
  const { storage, neighbours, log } = parts
  const look = () => void lookAtTime(parts).catch(() => undefined)
  let wrote = true
  const timer = setInterval(() => {
    const { writing, why } = storage.standing()
    if (wrote !== writing) {
      log.warn(writing ? 'The database takes entries again.' : `Nothing is saved: ${why ?? ''}`)
    }
    wrote = writing
    look()
  }, EVERY_MS).unref()
  neighbours.onWord(({ say }) => {
    if (say === 'clock' || say === 'missed') look()
  })
  return { stop: () => clearInterval(timer) }
}

export async function lookAtTime(parts: Shared): Promise<void> {
  const { time, storage, neighbours, log, tellClock } = parts
  const kept = await neighbours.look()
  const step = time.noticeStep()
  if (!kept) return
  if (differs(time, kept, step)) {
    time.adopt(kept)
    tellClock()
  } else if (step !== undefined) {
    log.warn(`The database's clock was moved by ${String(step)} ms. Server time did not follow.`)
    await storage.run('keepTime', time.kept())
  }
  const { markMs, epoch } = time.kept()
  if (markMs - kept.markMs > EVERY_MS / 2) await storage.run('raiseMark', { markMs, epoch })
}

/**
 * Whether the others go by another time. After a step seen here theirs only counts if they went on with it: then
 * it was this process that stood still.
 */
function differs(time: ServerTime, kept: KeptTime, step: number | undefined): boolean {
  if (kept.epoch !== time.epoch) return kept.epoch > time.epoch
  const { aheadMs, markMs } = time.kept()
  if (aheadMs === undefined || kept.aheadMs === undefined) return false
  if (step !== undefined) return kept.markMs > markMs + APART_MS
  return Math.abs(kept.aheadMs - aheadMs) > APART_MS
}
