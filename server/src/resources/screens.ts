import fastifyStatic from '@fastify/static'
import { problem } from '@pitlamp/contract'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { existsSync } from 'node:fs'
import { extname, join, sep } from 'node:path'
import { sendProblem } from './problems.ts'

const NOT_BUILT = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Pitlamp</title>
<h1>The screens are not built</h1>
<p>The server runs and keeps what it is sent, but it has no screens to show. Stop it and run <code>npm start</code>,
which builds them.</p></html>
`

/** The built screens; every other address of theirs is the same page, which finds its way itself. */
export async function serveScreens(app: FastifyInstance, folder: string): Promise<void> {
  const built = existsSync(join(folder, 'index.html'))
  if (built) {
    await app.register(fastifyStatic, { root: folder, cacheControl: false, setHeaders: cacheBy })
  }
  app.setNotFoundHandler((request, reply) => {
    if (!isScreen(request)) return sendProblem(reply, problem('notFound'))
    return built ? reply.sendFile('index.html') : sayNotBuilt(reply)
  })
}

function sayNotBuilt(reply: FastifyReply): FastifyReply {
  return reply.code(503).header('content-type', 'text/html; charset=utf-8').send(NOT_BUILT)
}

function isScreen({ method, url }: FastifyRequest): boolean {
  const path = url.split('?', 1)[0] ?? ''
  if (method !== 'GET' && method !== 'HEAD') return false
  return !/^\/(api|socket\.io)(\/|$)/.test(path) && extname(path) === ''
}

/** Built files below `assets` carry a hash of their content in their name; the rest is asked for anew. */
function cacheBy(
  reply: { setHeader: (name: string, value: string) => unknown },
  path: string,
): void {
  const hashed = path.includes(`${sep}assets${sep}`)
  reply.setHeader('cache-control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache')
}
