/** Errors as RFC 9457 problem details, on HTTP and, in the same shape, in socket answers. */
import * as z from 'zod/mini'
import { refusalSchema, refusalSentence, type Refusal } from './refusal.ts'

export const problemSchema = z.object({
  /** `urn:pitlamp:` and the refusal's name. */
  type: z.string(),
  title: z.string(),
  status: z.int(),
  /** What exactly, where more can be said than the title does. */
  detail: z.optional(z.string()),
  refusal: refusalSchema,
})
export type Problem = z.infer<typeof problemSchema>

const STATUS: Readonly<Record<Refusal, number>> = {
  malformed: 422,
  tooLarge: 413,
  otherBody: 409,
  roleMayNot: 403,
  otherMeeting: 404,
  otherDevice: 403,
  revoked: 403,
  wallNotGiven: 403,
  notSaved: 503,
  batchTooLarge: 413,
  staleDocument: 409,
  notJoined: 401,
  codeUnknown: 403,
  tooManyTries: 429,
  notFound: 404,
  wrongOrigin: 403,
  otherProtocol: 409,
  malformedRequest: 400,
  tooManyRequests: 429,
  serverFault: 500,
}

export function problem(refusal: Refusal, detail?: string): Problem {
  return {
    type: `urn:pitlamp:${refusal}`,
    title: refusalSentence(refusal),
    status: STATUS[refusal],
    ...(detail === undefined ? {} : { detail }),
    refusal,
  }
}
