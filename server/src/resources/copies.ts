import {
  broughtInSchema,
  COPY_LIMIT_BYTES,
  meetingCopySchema,
  serverTime,
  type BroughtIn,
  type MeetingCopy,
} from '@pitlamp/contract'
import { checked } from '../copies/checked.ts'
import { laidDown } from '../copies/laid-down.ts'
import { holderIn, type Resource } from './guarded.ts'
import { Refused, responses } from './problems.ts'

/** Clocks of two machines differ by less in any case. Common practice, no source. */
const BEHIND_BEYOND_MS = 2_000

/** A captain brings in a meeting that a screen had, such as of a server that is dead. */
export const copyRoutes: Resource = (app, { storage, time }) => {
  const schema = { body: meetingCopySchema, response: responses(broughtInSchema) }
  const route = {
    schema,
    config: { asks: { do: 'makeMeeting' } },
    bodyLimit: COPY_LIMIT_BYTES,
  } as const
  app.post('/copies', route, async (request): Promise<BroughtIn> => {
    const { team, device } = holderIn(request)
    const nowMs = time.now()
    const found = checked(request.body, nowMs)
    if ('wrong' in found) throw new Refused('malformedRequest', found.wrong)
    const { copy, left } = found
    const answer = await storage.run('bringIn', {
      ...{ team: team.id, device: device.id, meeting: copy.meeting.id, copy, nowMs },
      ...laidDown(copy),
    })
    if ('refused' in answer) throw new Refused(answer.refused)
    const { broughtIn } = answer
    return { ...broughtIn, left: [...left, ...broughtIn.left], ...behind(copy, nowMs) }
  })
}

/** A clock that is behind makes every countdown late: whoever brings the copy in is told. */
function behind({ meeting, asOf }: MeetingCopy, nowMs: number): Pick<BroughtIn, 'behindMs'> {
  const behindMs = Math.round(serverTime(meeting.clock, asOf) - nowMs)
  return behindMs > BEHIND_BEYOND_MS ? { behindMs } : {}
}
