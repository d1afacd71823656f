/** Every error leaves as problem details (RFC 9457), with one sentence for the person. */
import { problem, problemSchema, type Problem, type Refusal } from '@pitlamp/contract'
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import type { ZodMiniType } from 'zod/mini'
import type { Metrics } from '../metrics/metrics.ts'
import { NotSaved } from '../storage/port.ts'

export const PROBLEM_TYPE = 'application/problem+json'

/** A refusal on its way out of a route. */
export class Refused extends Error {
  readonly problem: Problem

  constructor(refusal: Refusal, detail?: string) {
    super(refusal)
    this.problem = problem(refusal, detail)
  }
}

const problemResponse = {
  description: 'A problem, with one sentence for the person',
  content: { [PROBLEM_TYPE]: { schema: problemSchema } },
}

/** What a route answers with when all goes well, and that everything else is a problem. */
export function responses<S extends ZodMiniType>(schema: S) {
  return { 200: schema, '4xx': problemResponse, '5xx': problemResponse }
}

export function sendProblem(reply: FastifyReply, said: Problem): FastifyReply {
  return reply
    .code(said.status)
    .header('content-type', PROBLEM_TYPE)
    .serializer(JSON.stringify)
    .send(said)
}

export function answerWithProblems(app: FastifyInstance, metrics: Pick<Metrics, 'refused'>): void {
  app.setErrorHandler((error: FastifyError, request, reply) => {
    const said = problemOf(error, request)
    if (said.refusal === 'serverFault') request.log.error(error, 'fault')
    else request.log.info({ refusal: said.refusal }, 'refused')
    metrics.refused('request', said.refusal)
    return sendProblem(reply, said)
  })
}

function problemOf(error: FastifyError, request: FastifyRequest): Problem {
  if (error instanceof Refused) return error.problem
  if (error instanceof NotSaved) return problem('notSaved')
  if (error.validation) return problem('malformedRequest', validationWords(error))
  if (error.statusCode === 413) return tooMuch(request)
  if (error.statusCode === 429) return problem('tooManyRequests')
  if (error.statusCode === 404) return problem('notFound')
  const ours = error.statusCode === undefined || error.statusCode >= 500
  return ours ? problem('serverFault') : problem('malformedRequest', error.message)
}

function tooMuch({ routeOptions: { url = '', bodyLimit } }: FastifyRequest): Problem {
  if (url.endsWith('/entries')) return problem('batchTooLarge')
  if (!url.endsWith('/copies')) return problem('tooLarge')
  return problem('malformedRequest', `A copy has at most ${String(bodyLimit)} bytes.`)
}

function validationWords(error: FastifyError): string {
  const first = error.validation?.[0]
  const where = (first?.instancePath ?? '').replace(/^\//, '').replaceAll('/', '.')
  const what = first?.message ?? error.message
  return where === '' ? what : `${where}: ${what}`
}
