import type { Part } from '../rules/parts.ts'
import { RULE_KINDS } from '../rules/kinds/index.ts'
import { SENTENCES } from '../sentences/index.ts'
import type { Contradiction } from './contradiction.ts'
import { hasCategory, type Look } from './ground.ts'

/** Rules about a category that nobody in the crew has. An empty crew is one that is not written yet. */
export const categoryOfNobody: Look = ({ rules, people }) => {
  if (people.length === 0) return []
  return rules.flatMap((rule): Contradiction[] => {
    const value = rule.value as Readonly<Record<string, unknown>>
    const named = (CATEGORY_PARTS.get(rule.kind) ?? []).flatMap((part) => {
      const who = value[part]
      return typeof who === 'string' ? [who] : []
    })
    const nobody = new Map(
      named
        .filter((who) => !people.some((person) => hasCategory(person, who)))
        .map((who) => [who.toLowerCase(), who]),
    )
    return [...nobody.values()].map((who) => ({
      ...{ id: `categoryOfNobody:${rule.id}:${who.toLowerCase()}`, rules: [rule.id] },
      what: `Nobody in the crew is called ${who}.`,
      why: `${SENTENCES[rule.kind].called} is about them. Give the category to somebody, or leave the rule out.`,
    }))
  })
}

const CATEGORY_PARTS: ReadonlyMap<string, readonly string[]> = new Map(
  RULE_KINDS.map(({ kind, parts }) => [
    kind,
    Object.entries(parts as Readonly<Record<string, Part>>)
      .filter(([, { is }]) => is === 'category')
      .map(([part]) => part),
  ]),
)
