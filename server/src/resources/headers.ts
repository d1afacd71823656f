import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'
import { isOurs, type Names } from '../access/origin.ts'
import { Refused } from './problems.ts'

const SELF = ["'self'"]
const NONE = ["'none'"]

/** What a page of ours may do: load from here, speak to here, and nothing inline. */
const CONTENT_SECURITY = {
  useDefaults: false,
  directives: {
    defaultSrc: NONE,
    scriptSrc: SELF,
    styleSrc: SELF,
    imgSrc: SELF,
    fontSrc: SELF,
    // Older engines do not take a websocket to this server for 'self'.
    connectSrc: [...SELF, 'ws:', 'wss:'],
    manifestSrc: SELF,
    workerSrc: SELF,
    mediaSrc: SELF,
    formAction: SELF,
    baseUri: NONE,
    frameAncestors: NONE,
  },
}

/** Headers, and who is answered at all. Nothing here asks for HTTPS: in the hall there is none. */
export async function headers(app: FastifyInstance, names: Names): Promise<void> {
  app.addHook('onRequest', ({ headers: { host, origin } }, _reply, done) => {
    done(isOurs({ host, origin }, names) ? undefined : new Refused('wrongOrigin'))
  })
  await app.register(helmet, {
    contentSecurityPolicy: CONTENT_SECURITY,
    strictTransportSecurity: false,
    crossOriginOpenerPolicy: false,
    originAgentCluster: false,
  })
}
