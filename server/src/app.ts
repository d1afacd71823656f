/** The whole server but its start: what tests and `main.ts` both open. It listens to nothing yet. */
import compress from '@fastify/compress'
import cookie from '@fastify/cookie'
import rateLimit from '@fastify/rate-limit'
import fastify, { LogController, type FastifyInstance, type FastifyServerOptions } from 'fastify'
import {
  serializerCompiler,
  validatorCompiler,
  type ZodTypeProvider,
} from 'fastify-type-provider-zod'
import type { Deps } from './deps.ts'
import { loggerFor, newRequestId, rounded } from './logging.ts'
import { NOT_MEASURED } from './metrics/metrics.ts'
import { authorityRoute } from './resources/authority.ts'
import { clockRoutes } from './resources/clock.ts'
import { copyRoutes } from './resources/copies.ts'
import { demoRoutes } from './resources/demo.ts'
import { deviceRoutes } from './resources/devices.ts'
import { documentVersionRoutes } from './resources/document-versions.ts'
import { documentRoutes } from './resources/documents.ts'
import { entryRoutes } from './resources/entries.ts'
import { guard } from './resources/guarded.ts'
import { headers } from './resources/headers.ts'
import { healthRoutes } from './resources/health.ts'
import { inviteRoutes } from './resources/invites.ts'
import { joinRoutes } from './resources/join.ts'
import { meRoutes } from './resources/me.ts'
import { metricsRoute } from './resources/metrics.ts'
import { meetingRoutes } from './resources/meetings.ts'
import { openApiRoute } from './resources/openapi.ts'
import { peopleRoutes } from './resources/people.ts'
import { planLinkRoutes } from './resources/plan-links.ts'
import { planRoutes } from './resources/plan.ts'
import { answerWithProblems } from './resources/problems.ts'
import { serveScreens } from './resources/screens.ts'
import { trayRoutes } from './resources/tray.ts'
import { wallRoutes } from './resources/wall.ts'
import { workRoutes } from './resources/work.ts'
import { openSockets, type Sockets } from './sync/sockets.ts'

export interface App {
  readonly http: FastifyInstance
  readonly sockets: Sockets
  /** What it answers to: `GET /api/meetings`. */
  readonly routes: readonly string[]
}

const BODY_LIMIT_BYTES = 64 * 1024
/** Requests a minute of one device, or of one address where no device is behind it. Common practice, no source. */
const A_MINUTE = 600

/** Given at once and not set later, or the library loads compilers that nobody uses. Its types know those only. */
const COMPILERS = {
  compilersFactory: {
    buildValidator: () => validatorCompiler,
    buildSerializer: () => serializerCompiler,
  },
} as unknown as FastifyServerOptions['schemaController']

export async function buildApp(deps: Deps): Promise<App> {
  const metrics = deps.measured?.metrics ?? NOT_MEASURED
  const http = fastify({
    logger: loggerFor(deps.log),
    genReqId: newRequestId,
    logController: new LogController({ disableRequestLogging: true }),
    bodyLimit: BODY_LIMIT_BYTES,
    forceCloseConnections: true,
    trustProxy: deps.trustProxy ?? false,
    schemaController: COMPILERS,
  })
  const routes: string[] = []
  http.addHook('onRoute', ({ method, url }) => {
    for (const one of [method].flat()) if (one !== 'HEAD') routes.push(`${one} ${url}`)
  })
  answerWithProblems(http, metrics)
  http.addHook('onResponse', ({ log, method, routeOptions }, reply, done) => {
    const { statusCode: status, elapsedTime } = reply
    log.info({ method, route: routeOptions.url, status, tookMs: rounded(elapsedTime) }, 'answered')
    done()
  })
  await headers(http, deps.names)
  await http.register(compress, { encodings: ['gzip'] })
  const sockets = openSockets(deps, http.log)
  healthRoutes(http, deps)
  metricsRoute(http, deps, sockets)
  authorityRoute(http, deps)
  await http.register((api) => apiRoutes(api, deps, sockets), { prefix: '/api' })
  await serveScreens(http, deps.web)
  await http.ready()
  sockets.attach(http.server)
  return { http, sockets, routes }
}

async function apiRoutes(scope: FastifyInstance, deps: Deps, sockets: Sockets): Promise<void> {
  const api = scope.withTypeProvider<ZodTypeProvider>()
  await api.register(cookie)
  guard(api, deps)
  await api.register(rateLimit, {
    max: A_MINUTE,
    timeWindow: 60_000,
    hook: 'preHandler',
    keyGenerator: ({ holder, ip }) => (holder ? `${holder.team.id}/${holder.device.id}` : ip),
  })
  openApiRoute(api)
  const rooms = [
    ...[
      joinRoutes,
      meRoutes,
      meetingRoutes,
      entryRoutes,
      documentRoutes,
      peopleRoutes,
      inviteRoutes,
    ],
    ...[documentVersionRoutes, planRoutes, planLinkRoutes, workRoutes],
    ...[deviceRoutes(sockets), wallRoutes(sockets), clockRoutes(sockets), demoRoutes, trayRoutes],
    copyRoutes,
  ]
  for (const addRoutes of rooms) addRoutes(api, deps)
}
