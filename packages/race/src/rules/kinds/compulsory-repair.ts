import { asked, choice, count, duration, maybe, words, yesNo } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What must be on the car or work, and how long it may run without. */
export const compulsoryRepair = ruleKind('compulsoryRepair', {
  what: words,
  laps: maybe(asked(count)),
  withinMs: maybe(asked(duration)),
  until: maybe(asked(choice('laneChange', 'atOnce'))),
  underGreen: asked(yesNo),
  firstTime: maybe(asked(choice('laneChange', 'sameLimit'))),
  causedByOthers: maybe(asked(choice('asFirst', 'sameLimit'))),
  elseAtStop: maybe(asked(choice('nothing', 'anything'))),
  costLaps: maybe(asked(count)),
  when: maybe(asked(choice('wholeRace', 'darkSegments'))),
})
