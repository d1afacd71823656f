/** The second listener: the same app over TLS, with a certificate that follows the machine's addresses. */
import { once } from 'node:events'
import { createServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import type { App } from '../app.ts'
import type { Authority } from './authority.ts'

const LOOK_EVERY_MS = 60_000

export interface SealedListener {
  readonly port: number
  readonly close: () => void
}

export async function listenSealed(
  app: Pick<App, 'http' | 'sockets'>,
  authority: Authority,
  at: { readonly host: string; readonly port: number },
): Promise<SealedListener> {
  let pair = await authority.serverPair()
  const server = createServer({ key: pair.key, cert: pair.certificate }, (request, response) =>
    app.http.routing(request, response),
  )
  app.sockets.attach(server)
  server.listen(at.port, at.host)
  await once(server, 'listening')
  const renew = async () => {
    const next = await authority.serverPair()
    if (next.certificate === pair.certificate) return
    pair = next
    server.setSecureContext({ key: pair.key, cert: pair.certificate })
  }
  const timer = setInterval(() => {
    renew().catch((error: unknown) => app.http.log.error(error))
  }, LOOK_EVERY_MS)
  timer.unref()
  return {
    port: (server.address() as AddressInfo).port,
    close() {
      clearInterval(timer)
      server.close()
      server.closeAllConnections()
    },
  }
}
