import { appendedSchema, appendSchema, entriesPageSchema } from '@pitlamp/contract'
import * as z from 'zod/mini'
import { ownMeeting } from '../access/guard.ts'
import { takeEntries } from '../sync/intake.ts'
import { holderIn, meetingIn, type Resource } from './guarded.ts'
import { meetingParams } from './meetings.ts'
import { Refused, responses } from './problems.ts'

const afterSchema = z.object({
  after: z._default(z.pipe(z.string().check(z.regex(/^\d{1,15}$/)), z.transform(Number)), 0),
})
/** As much as a socket takes in one message. */
const BODY_LIMIT_BYTES = 1024 * 1024

/** Catch-up and first load in pages, and the same append as over the socket. */
export const entryRoutes: Resource = (app, deps) => {
  const page = {
    params: meetingParams,
    querystring: afterSchema,
    response: responses(entriesPageSchema),
  }
  app.get(
    '/meetings/:meeting/entries',
    { schema: page, config: { asks: { do: 'read' } } },
    async (request, reply) => {
      const { after } = request.query
      const { id, lastSeq: before } = meetingIn(request)
      const entries = await deps.storage.read.entriesAfter(id, after)
      // Read after the entries: what came between belongs to the next page.
      const now = await ownMeeting(deps.storage, holderIn(request), id)
      const to = entries.at(-1)?.seq ?? after
      // Our own rows, written from checked entries: checking 500 of them again would cost more than reading them.
      void reply.type('application/json; charset=utf-8').serializer(JSON.stringify)
      return {
        from: after,
        to,
        last: Math.max(now?.lastSeq ?? before, entries.at(-1)?.seq ?? 0),
        entries: [...entries],
      }
    },
  )

  const append = {
    params: meetingParams,
    body: appendSchema,
    response: responses(appendedSchema),
  }
  const route = { schema: append, config: { asks: 'sender' }, bodyLimit: BODY_LIMIT_BYTES } as const
  app.post('/meetings/:meeting/entries', route, async (request) => {
    if (request.body.meeting !== request.params.meeting) throw new Refused('otherMeeting')
    const answer = await takeEntries(deps, holderIn(request), request.body)
    if ('problem' in answer) throw new Refused(answer.problem.refusal, answer.problem.detail)
    return answer.ok
  })
}
