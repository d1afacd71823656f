import { asked, count, maybe } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What the race is run on. Sections number the lap for the place at the end. */
export const tracks = ruleKind('tracks', {
  tracks: asked(count),
  lanes: asked(count),
  sections: maybe(asked(count)),
})
