/** The midnight that hours of the clock are counted from: rules are data, and only a screen knows time zones. */
import type { Regulations } from '@pitlamp/race'
import { atVenueTime, isTimeZone, venueTime } from '../../parts/time.ts'

/**
 * The last midnight at the venue that is not after the first time the programme names; undefined where no rule speaks
 * of hours of the clock or the programme names no time.
 */
export function midnightOf({ programme, rules, timeZone }: Regulations): number | undefined {
  const first = programme.find(({ plannedAt }) => plannedAt !== undefined)?.plannedAt
  if (first === undefined || !isTimeZone(timeZone) || !rules.some(speaksOfHours)) return undefined
  const [day = ''] = venueTime(first, timeZone).split('T')
  return atVenueTime(`${day}T00:00:00`, timeZone)
}

function speaksOfHours(rule: Regulations['rules'][number]): boolean {
  if (rule.kind === 'darkHours') return true
  return rule.kind === 'restBlock' && (rule.value.from !== undefined || rule.value.to !== undefined)
}
