/**
 * Routes say what they ask for; this lets in who may. A route that says nothing does not start. Where a route names
 * a meeting it is handed that meeting, and only when it is the asking device's team's.
 */
import type { Meeting } from '@pitlamp/contract'
import type { FastifyBaseLogger, FastifyInstance, FastifyRequest, RawServerDefault } from 'fastify'
import type { IncomingMessage, ServerResponse } from 'node:http'
import type { ZodTypeProvider } from 'fastify-type-provider-zod'
import { DEVICE_COOKIE, holderOf, ownMeeting, refusalFor, type Asks } from '../access/guard.ts'
import { Seen } from '../access/seen.ts'
import type { Deps } from '../deps.ts'
import type { Holder } from '../storage/reads/access.ts'
import { Refused } from './problems.ts'

declare module 'fastify' {
  interface FastifyContextConfig {
    asks?: Asks
  }
  interface FastifyRequest {
    holder: Holder | undefined
    meeting: Meeting | undefined
  }
}

type Api = FastifyInstance<
  RawServerDefault,
  IncomingMessage,
  ServerResponse,
  FastifyBaseLogger,
  ZodTypeProvider
>

/** Puts a resource's routes below `/api`, handed what they need. */
export type Resource = (app: Api, deps: Deps) => void

export function guard(app: FastifyInstance, { storage, time }: Deps): void {
  const seen = new Seen(() => time.now())
  app.decorateRequest('holder', undefined)
  app.decorateRequest('meeting', undefined)
  app.addHook('onRoute', ({ url, config }) => {
    if (config?.asks === undefined) throw new Error(`${url} does not say who may.`)
    if (config.asks === 'anyone' && url.includes(':meeting')) {
      throw new Error(`${url} would show a team’s meeting to anyone.`)
    }
  })
  app.addHook('onRequest', async (request) => {
    const { asks } = request.routeOptions.config
    if (asks === undefined) return
    request.holder = await holderOf(storage, request.cookies[DEVICE_COOKIE])
    const refusal = refusalFor(asks, request.holder)
    if (refusal !== undefined) throw new Refused(refusal)
    const { holder } = request
    if (!holder || !seen.isNews(`${holder.team.id}/${holder.device.id}`)) return
    const noted = { team: holder.team.id, device: holder.device.id, nowMs: time.now() }
    storage.run('deviceSeen', noted).catch(() => undefined)
  })
  app.addHook('preHandler', async (request) => {
    const { meeting } = (request.params ?? {}) as { readonly meeting?: string }
    // What a sender names is judged by the writer, entry by entry.
    if (meeting === undefined || request.routeOptions.config.asks === 'sender') return
    request.meeting = await ownMeeting(storage, holderIn(request), meeting)
    if (!request.meeting) throw new Refused('otherMeeting')
  })
}

/** The meeting that the route names. */
export function meetingIn({ meeting }: Pick<FastifyRequest, 'meeting'>): Meeting {
  if (!meeting) throw new Error('This route names no meeting.')
  return meeting
}

/** The device behind a request that was let in as one. */
export function holderIn(request: FastifyRequest): Holder {
  if (!request.holder) throw new Error('This route lets in devices only.')
  return request.holder
}
