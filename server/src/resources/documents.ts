import { draftSchema, saveDraftSchema, staleDraftSchema, problem } from '@pitlamp/contract'
import { documentName, uuidV7 } from '@pitlamp/race'
import * as z from 'zod/mini'
import { holderIn, meetingIn, type Resource } from './guarded.ts'
import { PROBLEM_TYPE, Refused, responses } from './problems.ts'

const params = z.object({ meeting: uuidV7, document: documentName })

/** A draft has to fit into the entry that adopts it: as much content as an `adopted` body, and its frame. */
const BODY_LIMIT_BYTES = 50 * 1024

const stale = {
  description: 'Somebody saved this document meanwhile: both versions',
  content: { [PROBLEM_TYPE]: { schema: staleDraftSchema } },
}

/** Drafts of a meeting's documents. A stale save changes nothing and brings back both versions. */
export const documentRoutes: Resource = (app, { storage, time }) => {
  const path = '/meetings/:meeting/documents/:document'
  const read = { params, response: responses(draftSchema) }
  app.get(path, { schema: read, config: { asks: { do: 'read' } } }, (request) =>
    storage.read.draft(meetingIn(request).id, request.params.document),
  )

  const save = {
    params,
    body: saveDraftSchema,
    response: { ...responses(draftSchema), 409: stale },
  }
  const route = {
    schema: save,
    config: { asks: { do: 'saveDraft' } },
    bodyLimit: BODY_LIMIT_BYTES,
  } as const
  app.put(path, route, async (request, reply) => {
    const { device, team } = holderIn(request)
    const answer = await storage.run('saveDraft', {
      team: team.id,
      device: device.id,
      meeting: meetingIn(request).id,
      document: request.params.document,
      save: request.body,
      nowMs: time.now(),
    })
    if ('refused' in answer) throw new Refused(answer.refused)
    if ('draft' in answer) return answer.draft
    const both = { ...problem('staleDocument'), current: answer.stale, yours: request.body }
    return reply.code(409).header('content-type', PROBLEM_TYPE).send(both)
  })
}
