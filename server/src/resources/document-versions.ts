import { draftSchema, draftVersionsSchema } from '@pitlamp/contract'
import { documentName, uuidV7 } from '@pitlamp/race'
import * as z from 'zod/mini'
import { meetingIn, type Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

const params = z.object({ meeting: uuidV7, document: documentName })
const version = z.pipe(z.string().check(z.regex(/^\d{1,9}$/)), z.transform(Number))

/** Versions of drafts that were kept. Bringing one back is saving its content as any other. */
export const documentVersionRoutes: Resource = (app, { storage }) => {
  const path = '/meetings/:meeting/documents/:document/versions'
  const config = { asks: { do: 'read' } } as const

  const list = { params, response: responses(draftVersionsSchema) }
  app.get(path, { schema: list, config }, async (request) => {
    const { id } = meetingIn(request)
    return { versions: [...(await storage.read.draftVersions(id, request.params.document))] }
  })

  const one = { params: z.extend(params, { version }), response: responses(draftSchema) }
  app.get(`${path}/:version`, { schema: one, config }, async (request) => {
    const { id } = meetingIn(request)
    const draft = await storage.read.draftVersion(id, request.params)
    if (!draft) throw new Refused('notFound', 'This version was not kept.')
    return draft
  })
}
