/**
 * Loaded before the server: at each SIGUSR2 how long its loop stood still since the last, into LOOP_REPORT. Measured
 * from turn to turn of a timer of a millisecond, so that a loop that is never held up shows between one and two.
 */
import { renameSync, writeFileSync } from 'node:fs'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { isMainThread } from 'node:worker_threads'

const file = process.env.LOOP_REPORT

if (isMainThread && file !== undefined) {
  const turns = monitorEventLoopDelay({ resolution: 1 })
  turns.enable()
  process.on('SIGUSR2', () => {
    const [maxMs, p99Ms] = [turns.max, turns.percentile(99)].map((ns) => ns / 1e6)
    writeFileSync(`${file}.part`, JSON.stringify({ maxMs, p99Ms, turns: turns.count }))
    renameSync(`${file}.part`, file)
    // What writing it took is the next turn's.
    setTimeout(() => turns.reset(), 20)
  })
}
