/** Loaded before the server: every second its memory and how late its loop is, as JSON, into PROCESS_REPORT. */
import { renameSync, writeFileSync } from 'node:fs'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { isMainThread } from 'node:worker_threads'

const RESOLUTION_MS = 10
const file = process.env.PROCESS_REPORT

if (isMainThread && file !== undefined) {
  const delay = monitorEventLoopDelay({ resolution: RESOLUTION_MS })
  delay.enable()
  setInterval(() => {
    const { rss } = process.memoryUsage()
    // The histogram counts from one look to the next, which are this far apart when nothing is late.
    const lateP99Ms = Math.max(0, delay.percentile(99) / 1e6 - RESOLUTION_MS)
    writeFileSync(`${file}.part`, JSON.stringify({ memoryMb: rss / 1024 / 1024, lateP99Ms }))
    renameSync(`${file}.part`, file)
  }, 1_000).unref()
}
