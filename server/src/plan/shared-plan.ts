/** What a link to the plan shows, and nothing else of the meeting. */
import type { SharedPlan } from '@pitlamp/contract'
import { inForce } from '@pitlamp/race'
import type { PlannedMeeting } from './planned-meeting.ts'
import { zoneOf } from './wording.ts'

/** Of one person where one is named: spans only, the rest is everybody's. */
export function sharedPlan(planned: PlannedMeeting, person?: string): SharedPlan {
  const { meeting, state, now, adopted, timeline } = planned
  const rules = inForce(state, 'rules', now)
  return {
    meeting: {
      name: meeting.name,
      ...(rules?.place !== undefined && { place: rules.place }),
      timeZone: zoneOf(state, now),
    },
    asOf: now,
    adopted,
    people: (inForce(state, 'crew', now)?.people ?? []).map(({ id, name }) => ({ id, name })),
    segments: timeline.segments.map(({ id, name, startsAt, endsAt }) => {
      return { id, name, startsAt, endsAt }
    }),
    spans: timeline.spans
      .filter((span) => person === undefined || span.person === person)
      .map(({ id, person: whose, duty, segment, fromAt, toAt, post, lane }) => {
        return { id, person: whose, duty, segment, fromAt, toAt, post, lane }
      }),
    stops: timeline.stops.map(({ id, segment, at, mandatory, tasks }) => {
      const task = tasks.length > 0 ? tasks.join(', ') : undefined
      return { id, segment, at, mandatory, task }
    }),
  }
}
