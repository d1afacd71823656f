/** Keeps the server's clock on the disk, every second and whenever the captain sets it, and says what it met. */
import type { FastifyBaseLogger } from 'fastify'
import type { Storage } from '../storage/port.ts'
import type { ServerTime } from './server-time.ts'

const EVERY_MS = 1_000

export function keepTime(parts: {
  readonly time: ServerTime
  readonly storage: Storage
  readonly log: Pick<FastifyBaseLogger, 'warn'>
}): { readonly stop: () => void } {
  const { time, storage, log } = parts
  let wrote = true
  const timer = setInterval(() => {
    const { writing, why } = storage.standing()
    if (wrote !== writing)
      log.warn(writing ? 'The disk takes entries again.' : `Nothing is saved: ${why ?? ''}`)
    wrote = writing
    const step = time.noticeStep()
    if (step !== undefined) {
      log.warn(
        `The machine's clock was moved by ${String(step)} ms. Server time did not follow it.`,
      )
    }
    if (!writing) return
    const { markMs, epoch } = time.kept()
    const kept =
      step === undefined
        ? storage.run('raiseMark', { markMs, epoch })
        : storage.run('keepTime', time.kept())
    kept.catch(() => undefined)
  }, EVERY_MS)
  timer.unref()
  return { stop: () => clearInterval(timer) }
}

/** Sets the clock by the captain's press: on the disk first, then here. */
export async function settleTime(
  time: ServerTime,
  storage: Storage,
  shiftMs: number,
): Promise<void> {
  const kept = time.settled(shiftMs)
  await storage.run('keepTime', kept)
  time.settle(shiftMs, kept)
}
