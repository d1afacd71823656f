import { asked, choice, count, maybe, segments, words } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Something that must be done at stops, as the plan names it. */
export const stopTask = ruleKind('stopTask', {
  task: words,
  times: asked(count),
  segments: maybe(asked(segments)),
  power: maybe(asked(choice('on', 'off'))),
})
