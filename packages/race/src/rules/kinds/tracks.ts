import { asked, count } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** What the race is run on. */
export const tracks = ruleKind('tracks', { tracks: asked(count), lanes: asked(count) })
