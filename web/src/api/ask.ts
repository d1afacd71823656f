/** Asks the server over HTTP. Whatever goes wrong comes back as a value with a sentence for the person. */
import { problemSchema, type Refusal } from '@pitlamp/contract'

export interface Failure {
  /** `noServer`: no answer came. `unreadable`: one came that is none of ours. */
  readonly refusal: Refusal | 'noServer' | 'unreadable'
  readonly sentence: string
  /** The whole answer, where it says more than a sentence. */
  readonly answer?: unknown
}
export type Reply<T> = { readonly ok: T } | { readonly failed: Failure }

interface Schema<T> {
  safeParse(value: unknown): { readonly success: boolean; readonly data?: T | undefined }
}

const NO_SERVER: Failure = {
  refusal: 'noServer',
  sentence: 'The server does not answer. Nothing was changed; try again when it is back.',
}
const UNREADABLE: Failure = {
  refusal: 'unreadable',
  sentence: 'The answer makes no sense to this version of the screen. Reload it and try again.',
}
const PATIENCE_MS = 10_000

/** `request` is method and path, as one reads it in a log. */
export async function ask<T>(
  schema: Schema<T>,
  request: `${'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE'} /${string}`,
  body?: unknown,
): Promise<Reply<T>> {
  const space = request.indexOf(' ')
  const response = await fetch(request.slice(space + 1), {
    method: request.slice(0, space),
    signal: AbortSignal.timeout(PATIENCE_MS),
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  }).catch(() => undefined)
  if (response === undefined) return { failed: NO_SERVER }
  const answer: unknown = await response.json().catch(() => undefined)
  if (!response.ok) return { failed: failure(response.status, answer) }
  const { data } = schema.safeParse(answer)
  return data === undefined ? { failed: UNREADABLE } : { ok: data }
}

function failure(status: number, answer: unknown): Failure {
  const problem = problemSchema.safeParse(answer).data
  // A proxy without its server answers for it.
  if (problem === undefined) return status >= 500 ? NO_SERVER : UNREADABLE
  const { refusal, title, detail } = problem
  return { refusal, sentence: detail === undefined ? title : `${title} ${detail}`, answer }
}
