import { meetingTime, workLineSchema, workOutSchema, type WorkLine } from '@pitlamp/contract'
import { documentSchemas, type Drafts } from '@pitlamp/race'
import { PassThrough } from 'node:stream'
import type { Deps } from '../deps.ts'
import { Works } from '../work/works.ts'
import { holderIn, meetingIn, type Resource } from './guarded.ts'
import { meetingParams } from './meetings.ts'
import { responses } from './problems.ts'

const LINES = 'application/x-ndjson'

/** What a rotation is worked out from. */
const DOCUMENTS = ['rules', 'crew', 'plan'] as const

const workResponses = {
  ...responses(workLineSchema),
  200: {
    description:
      'One JSON line each, while it is worked on; whoever closes the connection cancels it',
    content: { [LINES]: { schema: workLineSchema } },
  },
}

/** A rotation worked out. One request: its lines come as they come to be, on the connection it was asked on. */
export const workRoutes: Resource = (app, deps) => {
  const works = new Works(deps.storage.where)
  const schema = { params: meetingParams, body: workOutSchema, response: workResponses }
  const options = { schema, config: { asks: { do: 'workOut' } }, compress: false } as const
  app.post('/meetings/:meeting/work', options, async (request, reply) => {
    const meeting = meetingIn(request)
    const asked = request.body
    const drafts = asked.from === 'drafts' ? await draftsOf(deps, meeting.id) : {}
    const now = meetingTime(meeting.clock, deps.time.now())
    const lines = new PassThrough()
    const say = (line: string) => void lines.write(`${line}\n`)
    const { done, cancel } = works.begin({
      ...{ team: holderIn(request).team.id, say },
      work: { meeting: meeting.id, asked, now, drafts },
    })
    reply.raw.on('close', cancel)
    done.catch((error: unknown) => request.log.error(error, 'fault')).finally(() => lines.end())
    // A proxy passes lines on as they come.
    const answer = reply.header('x-accel-buffering', 'no').type(LINES)
    // The types know one line, not a stream of them.
    return answer.send(lines as unknown as WorkLine)
  })
}

async function draftsOf({ storage }: Pick<Deps, 'storage'>, meeting: string): Promise<Drafts> {
  const found = await Promise.all(
    DOCUMENTS.map(async (document) => {
      const { content } = await storage.read.draft(meeting, document)
      // Drafts are stored as they came: one that does not fit is none.
      return [document, documentSchemas[document].safeParse(content).data] as const
    }),
  )
  return Object.fromEntries(found.filter(([, content]) => content !== undefined))
}
