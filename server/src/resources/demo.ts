import { meetingSchema, openDemoSchema } from '@pitlamp/contract'
import { writeTicket } from '../access/tickets.ts'
import type { Deps, OpenDemo } from '../deps.ts'
import { holderIn, type Resource } from './guarded.ts'
import { meetingFor } from './meetings.ts'
import { Refused, responses } from './problems.ts'

const USUAL_SPEED = 10

/** One press on an empty Meetings screen opens a fictional meeting that runs by itself. */
export const demoRoutes: Resource = (app, deps) => {
  const schema = { body: openDemoSchema, response: responses(meetingSchema) }
  app.post('/demo', { schema, config: { asks: { do: 'openDemo' } } }, async (request) => {
    if (!deps.openDemo) throw new Refused('notFound', 'This server has no demo.')
    const rate = request.body.speed ?? USUAL_SPEED
    const { meeting } = await runDemo(deps, deps.openDemo, rate)
    return meetingFor(deps.storage, holderIn(request), meeting)
  })
}

/** The simulator comes in from outside like everybody, with a ticket of the operator's. */
export function runDemo(deps: Deps, open: OpenDemo, rate: number): ReturnType<OpenDemo> {
  const code = writeTicket(deps.data, { simulator: true, onlyWithoutCaptain: false })
  const baseUrl = deps.ownAddress()
  return open({ baseUrl, code, rate })
}
