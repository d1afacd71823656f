import { joinSchema, meSchema } from '@pitlamp/contract'
import type { FastifyRequest } from 'fastify'
import { v7 as uuidV7 } from 'uuid'
import { DEVICE_COOKIE } from '../access/guard.ts'
import { asMeant, hashOf, isTyped, newToken } from '../access/tokens.ts'
import type { Deps } from '../deps.ts'
import type { Ticket } from '../storage/commands/access.ts'
import type { Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

/** Ten years: a device stays until the captain takes it out. */
const COOKIE_SECONDS = 315_360_000

/** A device joins with a code and gets its token as a cookie, the only time it is ever said. */
export const joinRoutes: Resource = (app, deps) => {
  const schema = { body: joinSchema, response: responses(meSchema) }
  app.post('/join', { schema, config: { asks: 'anyone' } }, async (request, reply) => {
    const { code, device, name } = request.body
    const tried = isTyped(code)
    if (tried && !(await deps.tries.begin(request.ip))) throw new Refused('tooManyTries')
    const codeHash = hashOf(asMeant(code))
    const token = newToken()
    const ticket = await ticketFor(deps, codeHash)
    const answer = await deps.storage.run('join', {
      codeHash,
      device,
      name,
      tokenHash: hashOf(token),
      ...cameWith(request),
      ...(ticket && { ticket }),
      nowMs: deps.time.now(),
    })
    if ('refused' in answer) throw new Refused(answer.refused, answer.detail)
    if (tried) await deps.tries.succeeded(request.ip)
    if (ticket) await deps.tickets.drop(codeHash)
    void reply.setCookie(DEVICE_COOKIE, token, {
      httpOnly: true,
      sameSite: 'strict',
      path: '/',
      secure: request.protocol === 'https',
      maxAge: COOKIE_SECONDS,
    })
    const { id, role, name: known } = answer.joined.device
    return { device: { id, role, name: known }, team: answer.joined.team }
  })
}

function cameWith(request: FastifyRequest): { readonly cameWithHash?: string } {
  const token = request.cookies[DEVICE_COOKIE]
  return token === undefined ? {} : { cameWithHash: hashOf(token) }
}

async function ticketFor(
  { tickets, team, time }: Deps,
  codeHash: string,
): Promise<Ticket | undefined> {
  const file = await tickets.read(codeHash)
  if (!file) return undefined
  const { simulator, onlyWithoutCaptain, teamName } = file
  const whose = teamName === undefined ? { team: file.team ?? team } : { team: uuidV7(), teamName }
  return { ...whose, role: 'captain', simulator, onlyWithoutCaptain, validUntil: time.now() }
}
