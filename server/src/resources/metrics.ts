import { problem } from '@pitlamp/contract'
import type { FastifyInstance } from 'fastify'
import { timingSafeEqual } from 'node:crypto'
import { hashOf } from '../access/tokens.ts'
import type { Deps } from '../deps.ts'
import type { Sockets } from '../sync/sockets.ts'
import { sendProblem } from './problems.ts'

/**
 * For a scraper, which is no device: it comes with the token that the operator set. Without it, and where none was
 * set, there is nothing at this address.
 */
export function metricsRoute(
  app: FastifyInstance,
  { storage, time, measured }: Pick<Deps, 'storage' | 'time' | 'measured'>,
  sockets: Pick<Sockets, 'standing'>,
): void {
  app.get('/metrics', { schema: { hide: true } }, async (request, reply) => {
    if (!measured || !isToken(request.headers.authorization, measured.token)) {
      return sendProblem(reply, problem('notFound'))
    }
    const { type, text } = await measured.metrics.text({
      openSockets: sockets.standing().open,
      devices: await storage.read.devicesJoined(),
      writing: storage.standing().writing,
      clockInDoubt: time.standing().doubt !== undefined,
    })
    return reply.type(type).send(text)
  })
}

/** Compared as hashes: of one length, and in a time that tells nothing. */
function isToken(authorization: string | undefined, token: string): boolean {
  const given = /^Bearer (.+)$/i.exec(authorization ?? '')?.[1]
  if (given === undefined) return false
  return timingSafeEqual(Buffer.from(hashOf(given)), Buffer.from(hashOf(token)))
}
