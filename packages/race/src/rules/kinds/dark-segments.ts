import { asked, segments } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Segments run with the hall dark. */
export const darkSegments = ruleKind('darkSegments', { segments: asked(segments) })
