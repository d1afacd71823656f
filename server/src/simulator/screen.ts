/** A screen without a picture: joins by code and speaks HTTP, as any device may. */
import { joinSchema, type Join } from '@pitlamp/contract'
import { ENVELOPE_VERSION, type Entry } from '@pitlamp/race'
import { v7 as uuidV7 } from 'uuid'

export interface Screen {
  readonly device: string
  readonly call: (method: 'GET' | 'POST' | 'PUT', path: string, body?: unknown) => Promise<unknown>
  /** The next entry of this device; its place in the device's count is taken once and for all. */
  readonly entry: (press: { at: number; epoch: number; kind: string; body: unknown }) => Entry
}

export class NotAnswered extends Error {}

export async function joinAsScreen(baseUrl: string, join: Omit<Join, 'device'>): Promise<Screen> {
  const device = uuidV7()
  const joined = await request(baseUrl, {
    method: 'POST',
    path: '/api/join',
    body: joinSchema.parse({ ...join, device }),
  })
  const cookie = joined.headers
    .getSetCookie()
    .map((line) => line.split(';')[0])
    .join('; ')
  let n = 0
  return {
    device,
    call: async (method, path, body) => {
      const response = await request(baseUrl, { method, path, body, cookie })
      return response.json()
    },
    entry: ({ at, epoch, kind, body }) => ({
      v: ENVELOPE_VERSION,
      id: uuidV7(),
      device,
      n: ++n,
      at,
      atBoundMs: 0,
      epoch,
      kind,
      body: JSON.stringify(body),
    }),
  }
}

interface Request {
  readonly method: 'GET' | 'POST' | 'PUT'
  readonly path: string
  readonly body?: unknown
  readonly cookie?: string
}

async function request(
  baseUrl: string,
  { method, path, body, cookie }: Request,
): Promise<Response> {
  const response = await fetch(new URL(path, baseUrl), {
    method,
    headers: {
      origin: new URL(baseUrl).origin,
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      ...(cookie === undefined ? {} : { cookie }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  })
  if (!response.ok)
    throw new NotAnswered(`${method} ${path}: ${response.status} ${await response.text()}`)
  return response
}
