import { asked, words } from '../parts.ts'
import { ruleKind } from '../rule-kind.ts'

/** Where the car must stop. */
export const pitBox = ruleKind('pitBox', { box: asked(words) })
