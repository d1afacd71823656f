/**
 * What is logged: lines of JSON with the id of the request or message they belong to, and never a code, a cookie, an
 * address, a name or a body. Requests and errors are written here and nowhere else, so that no line can be careless.
 */
import type { FastifyError, FastifyRequest, FastifyServerOptions } from 'fastify'
import { randomUUID } from 'node:crypto'

export const LOG_LEVELS = ['silent', 'error', 'warn', 'info', 'debug'] as const
export type LogLevel = (typeof LOG_LEVELS)[number]

export interface LogSettings {
  readonly level: LogLevel
  /** Where the lines go; standard output otherwise. */
  readonly stream?: { readonly write: (line: string) => void }
}

export const USUAL_LOG: LogSettings = { level: 'warn' }

export function loggerFor({ level, stream }: LogSettings): FastifyServerOptions['logger'] {
  const serializers = {
    req: ({ method, routeOptions }: FastifyRequest) => ({ method, route: routeOptions.url }),
    res: ({ statusCode }: { readonly statusCode?: number }) => ({ statusCode }),
    err: written,
  }
  return { level, serializers, ...(stream && { stream }) }
}

/** Told apart from those of every other process. */
export const newRequestId = (): string => randomUUID()

/** Milliseconds to a tenth. */
export const rounded = (ms: number): number => Math.round(ms * 10) / 10

type Written = {
  readonly [part in 'type' | 'message' | 'stack' | 'code']: string
}

/** A parser quotes what it could not read, and a database the row that it would not take. */
const QUOTES = ['SyntaxError', 'ZodError', '$ZodError']

function written(error: FastifyError): Written {
  const { name, code, stack = '' } = error
  return {
    type: name,
    message: QUOTES.includes(name) ? '' : error.message,
    // Without its first lines, which are the message again.
    stack: (stack.match(/^\s+at .+$/gm) ?? []).join('\n'),
    code: typeof code === 'string' ? code : '',
  }
}
