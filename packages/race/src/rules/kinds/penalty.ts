import { asked, choice, count, duration, maybe, words, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What a breach costs. `amount` in laps, seconds or places by what it is. */
export const penalty = ruleKind('penalty', {
  for: words,
  is: asked(
    choice(
      'warning',
      'laps',
      'seconds',
      'stopAndGo',
      'driveThrough',
      'position',
      'segmentLost',
      'exclusion',
    ),
  ),
  amount: maybe(asked(count)),
  per: choice('occurrence', 'lap', 'secondShort'),
  scope: choice('segment', 'stage', 'race'),
  withinLaps: maybe(asked(count)),
  grows: maybe(asked(yesNo)),
  contestableMs: maybe(asked(duration)),
})
