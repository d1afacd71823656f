/**
 * The whole HTTP interface as OpenAPI 3.1, from the same schemas that check it. The library is loaded and the
 * description made when somebody asks for it the first time: a start in the hall does not wait for it.
 */
import type { FastifyDynamicSwaggerOptions } from '@fastify/swagger'
import type { FastifyInstance, RouteOptions } from 'fastify'
import { DEVICE_COOKIE } from '../access/guard.ts'

type Described = Pick<RouteOptions, 'method' | 'url' | 'schema'>

/** Serves the description of every route registered after this. */
export function openApiRoute(api: FastifyInstance): void {
  const routes: Described[] = []
  let made: Promise<unknown> | undefined
  api.get('/openapi.json', { config: { asks: 'anyone' } }, async (_request, reply) => {
    made ??= describe(routes)
    return reply.type('application/json; charset=utf-8').send(await made)
  })
  api.addHook('onRoute', ({ method, url, schema }) => {
    if (method !== 'HEAD') routes.push({ method, url, schema })
  })
}

async function describe(routes: readonly Described[]): Promise<unknown> {
  const [
    { default: swagger },
    { default: fastify },
    { jsonSchemaTransform, validatorCompiler, serializerCompiler },
  ] = await Promise.all([
    import('@fastify/swagger'),
    import('fastify'),
    import('fastify-type-provider-zod'),
  ])
  const paper = fastify()
  paper.setValidatorCompiler(validatorCompiler)
  paper.setSerializerCompiler(serializerCompiler)
  await paper.register(swagger, { openapi: OPENAPI, transform: jsonSchemaTransform })
  for (const route of routes) paper.route({ ...route, handler: () => undefined })
  await paper.ready()
  return paper.swagger()
}

const OPENAPI = {
  openapi: '3.1.0',
  info: {
    title: 'Pitlamp',
    version: '1',
    description:
      'A team’s part in slot-car endurance meetings. Errors are RFC 9457 problem details.',
  },
  components: {
    securitySchemes: { device: { type: 'apiKey' as const, in: 'cookie', name: DEVICE_COOKIE } },
  },
  security: [{ device: [] }],
} satisfies FastifyDynamicSwaggerOptions['openapi']
