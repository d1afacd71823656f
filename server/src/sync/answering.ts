/** How a message of a screen is answered: within its allowance, logged with an id of its own, and counted. */
import { problem, type Answer } from '@pitlamp/contract'
import type { FastifyBaseLogger } from 'fastify'
import { newRequestId, rounded } from '../logging.ts'
import type { Metrics } from '../metrics/metrics.ts'

export type Log = Pick<FastifyBaseLogger, 'error' | 'info'>

interface Given {
  readonly event: string
  readonly log: Log
  readonly metrics: Pick<Metrics, 'refused'>
  readonly mayGoOn: () => boolean
}

export function answering<M, T>(
  { event, log, metrics, mayGoOn }: Given,
  handle: (message: M) => Promise<Answer<T>>,
) {
  return (message: M, answer: (answer: Answer<T>) => void): void => {
    if (typeof answer !== 'function') return
    const startedAt = performance.now()
    const reqId = newRequestId()
    const say = (said: Answer<T>) => {
      const tookMs = rounded(performance.now() - startedAt)
      log.info({ reqId, event, tookMs, ...outcomeOf(said) }, 'answered')
      if ('problem' in said) metrics.refused('message', said.problem.refusal)
      answer(said)
    }
    if (!mayGoOn()) {
      say({ problem: problem('tooManyRequests') })
      return
    }
    handle(message).then(say, (err: unknown) => {
      log.error({ reqId, event, err }, 'fault')
      say({ problem: problem('serverFault') })
    })
  }
}

interface Batch {
  readonly results?: readonly { readonly outcome: string; readonly refusal?: string }[]
}

/** Why not, or what became of how many entries. */
function outcomeOf(said: Answer<unknown>): Readonly<Record<string, unknown>> {
  if ('problem' in said) return { refusal: said.problem.refusal }
  const { results } = said.ok as Batch
  if (!results) return {}
  const counts: Record<string, number> = {}
  for (const { outcome, refusal } of results) {
    const what = refusal ?? outcome
    counts[what] = (counts[what] ?? 0) + 1
  }
  return { entries: counts }
}
