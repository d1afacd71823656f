/**
 * Answers worth it leave compressed. The usual plugin loads half a megabyte of stream libraries before the
 * server listens; gzip alone, which is all that browsers take over plain HTTP, is this much.
 */
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { Readable } from 'node:stream'
import { promisify } from 'node:util'
import { createGzip, gzip } from 'node:zlib'

const WORTH_IT_BYTES = 1024
const COMPRESSIBLE =
  /^(text\/|application\/(json|problem\+json|javascript|manifest\+json)|image\/svg)/
const TAKES_GZIP = /\bgzip\b(?!\s*;\s*q=0(\.0*)?\s*(,|$))/

const compress = promisify(gzip)

export function sendCompressed(app: FastifyInstance): void {
  app.addHook('onSend', async (request, reply, payload) => {
    if (!isWorthIt(request, reply)) return payload
    if (payload instanceof Readable) {
      mark(reply)
      return payload.pipe(createGzip())
    }
    if (typeof payload !== 'string' || payload.length < WORTH_IT_BYTES) return payload
    mark(reply)
    return compress(payload)
  })
}

function isWorthIt({ method, headers }: FastifyRequest, reply: FastifyReply): boolean {
  const type = reply.getHeader('content-type')
  const length = reply.getHeader('content-length')
  return (
    method !== 'HEAD' &&
    reply.statusCode !== 206 &&
    typeof type === 'string' &&
    COMPRESSIBLE.test(type) &&
    !reply.hasHeader('content-encoding') &&
    (length === undefined || Number(length) >= WORTH_IT_BYTES) &&
    TAKES_GZIP.test(headers['accept-encoding'] ?? '')
  )
}

/** The length is no longer known; caches keep both forms apart. */
function mark(reply: FastifyReply): void {
  reply.removeHeader('content-length')
  reply.header('content-encoding', 'gzip').header('vary', 'accept-encoding')
}
