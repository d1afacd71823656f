import { openPlanSchema, sharedPlanSchema, type Meeting, type OpenPlan } from '@pitlamp/contract'
import { uuidV7, inForce } from '@pitlamp/race'
import type { FastifyReply, FastifyRequest } from 'fastify'
import * as z from 'zod/mini'
import { hashOf } from '../access/tokens.ts'
import type { Deps } from '../deps.ts'
import { calendarFile } from '../plan/calendar.ts'
import { FoldedLogs } from '../plan/folded-logs.ts'
import { plannedMeeting, type PlannedMeeting } from '../plan/planned-meeting.ts'
import { sharedPlan } from '../plan/shared-plan.ts'
import { meetingIn, type Resource } from './guarded.ts'
import { meetingParams } from './meetings.ts'
import { Refused, responses } from './problems.ts'

const CALENDAR = 'text/calendar'

const calendarResponses = {
  ...responses(z.string()),
  200: {
    description: 'An RFC 5545 calendar: an event for each planned duty',
    content: { [CALENDAR]: { schema: z.string() } },
  },
}

/** The plan outside the house: as a calendar file, and for whoever has a link. */
export const planRoutes: Resource = (app, deps) => {
  const logs = new FoldedLogs(deps.storage)
  const planOf = async (meeting: Meeting, person: string | undefined) => {
    const planned = await plannedMeeting(deps, logs, meeting)
    if (person !== undefined && !knows(planned, person)) {
      throw new Refused('notFound', 'There is no such person in this meeting.')
    }
    return planned
  }
  const sendCalendar = async (reply: FastifyReply, meeting: Meeting, person?: string) => {
    const planned = await planOf(meeting, person)
    const text = calendarFile(planned, { person, stampMs: deps.time.now() })
    return reply.type(`${CALENDAR}; charset=utf-8`).send(text)
  }

  const file = {
    params: meetingParams,
    querystring: z.object({ person: z.optional(uuidV7) }),
    response: calendarResponses,
  }
  const forDevices = { schema: file, config: { asks: { do: 'read' } } } as const
  app.get('/meetings/:meeting/calendar.ics', forDevices, (request, reply) =>
    sendCalendar(reply, meetingIn(request), request.query.person),
  )

  const open = { body: openPlanSchema, response: responses(sharedPlanSchema) }
  app.post('/plan', { schema: open, config: { asks: 'anyone' } }, async (request) => {
    const meeting = await meetingBehind(deps, request)
    const { person } = request.body
    return sharedPlan(await planOf(meeting, person), person)
  })

  const shared = { body: openPlanSchema, response: calendarResponses }
  const forAnyone = { schema: shared, config: { asks: 'anyone' } } as const
  app.post('/plan/calendar', forAnyone, async (request, reply) => {
    const meeting = await meetingBehind(deps, request)
    return sendCalendar(reply, meeting, request.body.person)
  })
}

type WithCode = FastifyRequest<{ Body: OpenPlan }>

/** Wrong codes are counted apart from those of joining: a link that opens must not forgive them. */
async function meetingBehind(
  { storage, tries }: Deps,
  { ip, body }: Pick<WithCode, 'ip' | 'body'>,
): Promise<Meeting> {
  const address = `plan ${ip}`
  if (!(await tries.begin(address))) {
    throw new Refused('tooManyTries', 'An old link does not open: ask the captain for a new one.')
  }
  const found = await storage.read.planBehind(hashOf(body.code.trim()))
  const meeting = found && (await storage.read.meeting(found.team, found.meeting))
  if (!meeting) throw new Refused('codeUnknown')
  await tries.succeeded(address)
  return meeting
}

function knows({ state, now, timeline, gone }: PlannedMeeting, person: string): boolean {
  const crew = inForce(state, 'crew', now)?.people ?? []
  return (
    crew.some(({ id }) => id === person) ||
    [...timeline.spans, ...gone].some((span) => span.person === person)
  )
}
