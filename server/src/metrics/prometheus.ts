/** The figures an operator watches, kept by the client library that Prometheus' own documentation names for Node. */
import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client'
import type { Metrics } from './metrics.ts'

/** Around the goals: a press is on the disk within 50 ms at p99. */
const APPEND_SECONDS = [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5]
/** Around the second in which a hint that was lost is made good. */
const LAG_SECONDS = [0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5]

export function measure(): Metrics {
  const registers = [new Registry()]
  const [registry] = registers as [Registry]
  collectDefaultMetrics({ register: registry })
  const entries = new Counter({
    name: 'pitlamp_entries_total',
    help: 'Entries answered, by outcome',
    labelNames: ['outcome'] as const,
    registers,
  })
  const refused = new Counter({
    name: 'pitlamp_refused_total',
    help: 'Requests, messages of screens and entries that were refused, by reason',
    labelNames: ['what', 'reason'] as const,
    registers,
  })
  const append = new Histogram({
    name: 'pitlamp_append_seconds',
    help: 'From a batch of entries coming in to its answer, on the disk',
    buckets: APPEND_SECONDS,
    registers,
  })
  const lag = new Histogram({
    name: 'pitlamp_news_lag_seconds',
    help: 'From an entry coming in, to whichever process, to its being told to the screens of this one',
    buckets: LAG_SECONDS,
    registers,
  })
  const gauge = (name: string, help: string) => new Gauge({ name, help, registers })
  const sockets = gauge('pitlamp_sockets_open', 'Screens connected to this process')
  const devices = gauge(
    'pitlamp_devices',
    'Devices that joined and were not taken out, of all teams',
  )
  const writing = gauge('pitlamp_writing', '1 while the store takes entries, 0 while it does not')
  const doubt = gauge('pitlamp_clock_in_doubt', '1 while the server is not sure of its clock')
  for (const outcome of ['recorded', 'duplicate', 'refused']) entries.inc({ outcome }, 0)
  return {
    appended(results, tookMs) {
      append.observe(tookMs / 1000)
      for (const result of results) {
        entries.inc({ outcome: result.outcome })
        if (result.outcome === 'refused') refused.inc({ what: 'entry', reason: result.refusal })
      }
    },
    refused: (what, reason) => refused.inc({ what, reason }),
    told: (lagMs) => lag.observe(Math.max(0, lagMs) / 1000),
    async text(standing) {
      sockets.set(standing.openSockets)
      devices.set(standing.devices)
      writing.set(standing.writing ? 1 : 0)
      doubt.set(standing.clockInDoubt ? 1 : 0)
      return { type: registry.contentType, text: await registry.metrics() }
    },
  }
}
