/** The plan for people who have not joined: a captain's link, and what opens behind it. */
import { planLinkSchema, planLinksRevokedSchema, sharedPlanSchema } from '@pitlamp/contract'
import { ask } from './ask.ts'

export const makePlanLink = (meeting: string) =>
  ask(planLinkSchema, `POST /api/meetings/${meeting}/plan-link`, {})

export const revokePlanLinks = (meeting: string) =>
  ask(planLinksRevokedSchema, `DELETE /api/meetings/${meeting}/plan-link`)

export const openPlan = (code: string) => ask(sharedPlanSchema, 'POST /api/plan', { code })

/** The calendar file behind a link; undefined where there is none to be had. */
export async function planCalendar(code: string, person?: string): Promise<Blob | undefined> {
  const response = await fetch('/api/plan/calendar', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(person === undefined ? { code } : { code, person }),
  }).catch(() => undefined)
  return response?.ok === true ? await response.blob() : undefined
}
