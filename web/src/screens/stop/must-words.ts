/** What a rule says of a fault that must be mended, in a line. */
import type { CompulsoryRepair } from '@pitlamp/race'
import { lapsWords } from '../../parts/penalty-words.ts'
import { countdown } from '../../parts/time.ts'

export function mustWords(repair: CompulsoryRepair): string {
  const clause = repair.clause === undefined ? '' : ` (${repair.clause})`
  return [`Must be mended${clause}${limitWords(repair)}`, ...aloneWords(repair)].join('; ')
}

function limitWords({ limit, over }: CompulsoryRepair): string {
  if (over) return ', the limit is over'
  if (limit === undefined) return ''
  if (limit.by === 'atOnce') return ', at once'
  if (limit.by === 'laneChange') return ', by the next lane change'
  if (limit.remainingMs === undefined)
    return limit.laps === undefined ? '' : `, within ${lapsWords(limit.laps)}`
  return `, ${limit.estimated ? 'about ' : ''}${countdown(limit.remainingMs)} left`
}

function aloneWords({ elseAtStop }: CompulsoryRepair): readonly string[] {
  if (elseAtStop === 'nothing') return ['nothing else may be done in the same stop']
  return elseAtStop === 'notKnown' ? ['ask whether anything else may be done in the same stop'] : []
}
