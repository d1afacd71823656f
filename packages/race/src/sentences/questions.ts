/** What the organiser has not said, to be asked at the briefing. */
import type { Regulations } from '../documents/rules.ts'
import type { Rule } from '../rules/index.ts'
import { NOT_KNOWN_YET } from '../rules/shape.ts'
import { SENTENCES } from './index.ts'
import { partsOf } from './in-words.ts'

/** Each question once, in the order of the rules and of what they say. */
export function briefingQuestions({ rules }: Regulations): readonly string[] {
  return [...new Set(rules.flatMap(questionsOf))]
}

function questionsOf({ kind, value }: Rule): readonly string[] {
  const asks: Readonly<Record<string, string | undefined>> = SENTENCES[kind].asks ?? {}
  const said: Readonly<Record<string, unknown>> = value
  return Object.keys(partsOf(kind))
    .filter((part) => said[part] === NOT_KNOWN_YET)
    .flatMap((part) => asks[part] ?? [])
}
