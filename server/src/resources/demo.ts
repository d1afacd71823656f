import { meetingSchema, openDemoSchema, type DemoOf } from '@pitlamp/contract'
import { ownMeeting } from '../access/guard.ts'
import type { Deps, OpenDemo } from '../deps.ts'
import { holderIn, type Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

const USUAL_SPEED = 10

/** One press on an empty Meetings screen opens a fictional meeting that runs by itself. */
export const demoRoutes: Resource = (app, deps) => {
  const schema = { body: openDemoSchema, response: responses(meetingSchema) }
  app.post('/demo', { schema, config: { asks: { do: 'openDemo' } } }, async (request) => {
    if (!deps.openDemo) throw new Refused('notFound', 'This server has no demo.')
    const holder = holderIn(request)
    const { speed: rate = USUAL_SPEED, of = 'digital' } = request.body
    const at = { rate, of, team: holder.team.id }
    const { meeting } = await runDemo(deps, deps.openDemo, at)
    const opened = await ownMeeting(deps.storage, holder, meeting)
    if (!opened) throw new Error('The demo was opened in another team.')
    return opened
  })
}

interface DemoAt {
  readonly rate: number
  readonly of: DemoOf
  /** Whose demo it is. */
  readonly team: string
}

/** The simulator comes in from outside like everybody, with a ticket of the operator's. */
export async function runDemo(
  deps: Deps,
  open: OpenDemo,
  { rate, of, team }: DemoAt,
): ReturnType<OpenDemo> {
  const code = await deps.tickets.write({ simulator: true, onlyWithoutCaptain: false, team })
  const baseUrl = deps.ownAddress()
  return open({ baseUrl, code, rate, of })
}
