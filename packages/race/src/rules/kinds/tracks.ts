import { asked, count, maybe, names } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/**
 * What the race is run on. Sections number the lap for the place at the end. Colours are those of the lanes in
 * order, counted on from track to track.
 */
export const tracks = ruleKind('tracks', {
  tracks: asked(count),
  lanes: asked(count),
  sections: maybe(asked(count)),
  colours: maybe(asked(names)),
})
