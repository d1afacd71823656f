/** A device that has joined a team: its cookie, and the HTTP interface as it may use it. */
import { v7 as uuidV7 } from 'uuid'
import { inviteSchema, meSchema, type Me, type Problem } from '@pitlamp/contract'
import type { Role } from '@pitlamp/race'

export interface Device {
  readonly url: string
  readonly id: string
  readonly name: string
  readonly me: Me
  /** Cookie and origin, for sockets and whatever else a test sends itself. */
  readonly headers: Readonly<Record<string, string>>
  readonly call: (method: Method, path: string, body?: unknown) => Promise<unknown>
  /** Another device, joined with a code this one (a captain's) asked for. */
  readonly invite: (role: Role, name: string) => Promise<Device>
}

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH'

/** The server answered with a problem. */
export class Refused extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(`${problem.title} ${problem.detail ?? ''}`)
    this.problem = problem
  }
}

export function join(url: string, code: string, name: string): Promise<Device> {
  return joinAs(url, { code, name, id: uuidV7() })
}

/** The same device, with another key: the server that gave it the first one is gone. */
export function joinAgain({ url, name, id }: Device, code: string): Promise<Device> {
  return joinAs(url, { code, name, id })
}

interface Joining {
  readonly code: string
  readonly name: string
  readonly id: string
}

async function joinAs(url: string, { code, name, id }: Joining): Promise<Device> {
  const joined = await request(url, {
    method: 'POST',
    path: '/api/join',
    body: { code, device: id, name },
  })
  const cookie = joined.headers.getSetCookie().map((line) => line.split(';')[0] ?? '')
  const headers = { cookie: cookie.join('; '), origin: new URL(url).origin }
  const call = async (method: Method, path: string, body?: unknown): Promise<unknown> => {
    const answer = await request(url, { method, path, body, headers })
    return answer.json()
  }
  return {
    url,
    id,
    name,
    headers,
    call,
    me: meSchema.parse(await call('GET', '/api/me')),
    invite: async (role, inviteeName) => {
      const invite = await call('POST', '/api/invites', { role, as: 'typed' })
      return join(url, inviteSchema.parse(invite).code, inviteeName)
    },
  }
}

interface Request {
  readonly method: Method
  readonly path: string
  readonly body?: unknown
  readonly headers?: Readonly<Record<string, string>>
}

async function request(url: string, { method, path, body, headers }: Request): Promise<Response> {
  const answer = await fetch(new URL(path, url), {
    method,
    headers: {
      origin: new URL(url).origin,
      ...headers,
      ...(body !== undefined && { 'content-type': 'application/json' }),
    },
    ...(body !== undefined && { body: JSON.stringify(body) }),
  })
  if (!answer.ok) throw new Refused((await answer.json()) as Problem)
  return answer
}
