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
    return { ready: true, clock: time.standing().doubt ? 'inDoubt' : 'set' }
  })
}
