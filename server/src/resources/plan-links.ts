import { planLinkSchema, planLinksRevokedSchema } from '@pitlamp/contract'
import { hashOf, newLinkCode } from '../access/tokens.ts'
import { holderIn, meetingIn, type Resource } from './guarded.ts'
import { meetingParams } from './meetings.ts'
import { Refused, responses } from './problems.ts'

/** A captain lets people without a device see the plan, and takes that back. */
export const planLinkRoutes: Resource = (app, { storage, time, addresses }) => {
  const path = '/meetings/:meeting/plan-link'
  const config = { asks: { do: 'sharePlan' } } as const

  const make = { params: meetingParams, response: responses(planLinkSchema) }
  app.post(path, { schema: make, config }, async (request) => {
    const code = newLinkCode()
    const of = { team: holderIn(request).team.id, meeting: meetingIn(request).id }
    const input = { ...of, codeHash: hashOf(code), nowMs: time.now() }
    const answer = await storage.run('makePlanLink', input)
    if (answer !== 'done') throw new Refused(answer.refused)
    return { code, links: addresses().map((address) => `${address}/plan#${code}`) }
  })

  const revoke = { params: meetingParams, response: responses(planLinksRevokedSchema) }
  app.delete(path, { schema: revoke, config }, async (request) => {
    const of = { team: holderIn(request).team.id, meeting: meetingIn(request).id }
    const answer = await storage.run('revokePlanLinks', { ...of, nowMs: time.now() })
    if ('refused' in answer) throw new Refused(answer.refused)
    return answer
  })
}
