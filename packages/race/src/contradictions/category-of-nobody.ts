import { plural } from '../sentences/plural.ts'
import { namesInWords } from '../checks/places.ts'
import type { Rule } from '../rules/index.ts'
import type { Part } from '../rules/parts.ts'
import { RULE_KINDS } from '../rules/kinds/index.ts'
import { SENTENCES } from '../sentences/index.ts'
import type { Contradiction } from './contradiction.ts'
import { hasCategory, type Look } from './ground.ts'

/**
 * A category that rules are about and nobody in the crew has, once, however many rules name it. An empty crew is one
 * that is not written yet.
 */
export const categoryOfNobody: Look = ({ rules, people }) => {
  if (people.length === 0) return []
  const nobody = new Map<string, { readonly who: string; readonly about: Set<Rule> }>()
  for (const rule of rules) {
    for (const who of categoriesOf(rule)) {
      if (people.some((person) => hasCategory(person, who))) continue
      const category = who.toLowerCase()
      const there = nobody.get(category) ?? { who, about: new Set() }
      nobody.set(category, { ...there, about: there.about.add(rule) })
    }
  }
  return [...nobody].map(([category, { who, about }]): Contradiction => {
    const ids = [...about].map(({ id }) => id)
    const called = [...new Set([...about].map(({ kind }) => SENTENCES[kind].called))]
    const rest = `leave the ${plural(ids.length, 'rule')} out`
    return {
      id: `categoryOfNobody:${category}:${ids.join(':')}`,
      rules: ids,
      what: `Nobody in the crew is called ${who}.`,
      why: `${namesInWords(called)} ${plural(called.length, 'is', 'are')} about them. Give the category to somebody, or ${rest}.`,
    }
  })
}

function categoriesOf({ kind, value }: Rule): readonly string[] {
  const parts = value as Readonly<Record<string, unknown>>
  return (CATEGORY_PARTS.get(kind) ?? []).flatMap((part) => {
    const who = parts[part]
    return typeof who === 'string' ? [who] : []
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
