import { meetingSchema, meetingsSchema, newMeetingSchema } from '@pitlamp/contract'
import { uuidV7 } from '@pitlamp/race'
import * as z from 'zod/mini'
import { holderIn, meetingIn, type Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

export const meetingParams = z.object({ meeting: uuidV7 })

/** The team's meetings. */
export const meetingRoutes: Resource = (app, { storage, time }) => {
  const list = { response: responses(meetingsSchema) }
  app.get('/meetings', { schema: list, config: { asks: { do: 'read' } } }, async (request) => {
    return { meetings: [...(await storage.read.meetings(holderIn(request).team.id))] }
  })

  const make = { body: newMeetingSchema, response: responses(meetingSchema) }
  app.post(
    '/meetings',
    { schema: make, config: { asks: { do: 'makeMeeting' } } },
    async (request) => {
      const team = holderIn(request).team.id
      const input = { team, meeting: request.body, nowMs: time.now() }
      const answer = await storage.run('createMeeting', input)
      if ('refused' in answer) throw new Refused(answer.refused)
      return answer.meeting
    },
  )

  const one = { params: meetingParams, response: responses(meetingSchema) }
  app.get('/meetings/:meeting', { schema: one, config: { asks: { do: 'read' } } }, (request) =>
    meetingIn(request),
  )
}
