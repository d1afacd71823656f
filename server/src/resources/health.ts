import * as z from 'zod/mini'
import type { FastifyInstance } from 'fastify'
import { problem } from '@pitlamp/contract'
import type { Deps } from '../deps.ts'
import { responses, sendProblem } from './problems.ts'

const readySchema = z.object({ ready: z.literal(true), clock: z.enum(['set', 'inDoubt']) })

/** Whether the process lives, and whether it can serve. No secrets, no device needed. */
export function healthRoutes(app: FastifyInstance, { storage, time }: Deps): void {
  const alive = { response: { 200: z.object({ alive: z.literal(true) }) } }
  app.get('/healthz', { schema: alive }, () => ({ alive: true }))

  app.get('/readyz', { schema: { response: responses(readySchema) } }, (_request, reply) => {
    if (!storage.standing().writing) return sendProblem(reply, problem('notSaved'))
    const unsure = clockUnsure(storage.neighbours?.boundMs())
    if (unsure !== undefined)
      return sendProblem(reply, { ...problem('serverFault', unsure), status: 503 })
    return { ready: true, clock: time.standing().doubt ? 'inDoubt' : 'set' }
  })
}

/** Two processes have to agree on the time as closely as a screen does that counts down to a second. */
const SURE_WITHIN_MS = 50

function clockUnsure(boundMs = 0): string | undefined {
  if (boundMs <= SURE_WITHIN_MS) return undefined
  return `The database’s clock is known to ${String(Math.ceil(boundMs))} ms only; ${String(SURE_WITHIN_MS)} ms are needed.`
}
