import type { FastifyInstance } from 'fastify'
import type { Deps } from '../deps.ts'

/** What a device installs to trust this server. No secret: the key stays in the data folder. */
export function authorityRoute(app: FastifyInstance, { authority }: Deps): void {
  if (!authority) return
  app.get('/authority.crt', { schema: { hide: true } }, (_request, reply) =>
    reply.type('application/x-x509-ca-cert').send(authority.certificate),
  )
}
