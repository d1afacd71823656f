import { describe, expect, it } from 'vitest'
import { RULE_KINDS } from '../rules/kinds/index.ts'
import { ruleSchema, type Rule } from '../rules/index.ts'
import { SENTENCES } from './index.ts'
import { choiceWords, partsOf } from './in-words.ts'
import { tokensOf, type Token } from './tokens.ts'

const namesIn = (tokens: readonly Token[]): string[] =>
  tokens.flatMap((token) =>
    token.is === 'words' ? [] : token.is === 'part' ? [token.part] : namesIn(token.tokens),
  )

describe.each(RULE_KINDS)('the sentence of $kind', ({ kind, parts }) => {
  const tokens = tokensOf(kind)

  it('says each part once and nothing else', () => {
    expect(namesIn(tokens).sort()).toEqual(Object.keys(parts).sort())
  })

  it('puts exactly the optional parts into brackets, one each', () => {
    const optional = tokens.filter((token) => token.is === 'optional')
    const maybe = Object.entries(partsOf(kind)).filter(([, part]) => part.optional === true)
    expect(optional.map(({ part }) => part).sort()).toEqual(maybe.map(([name]) => name).sort())
    for (const group of optional) expect(namesIn(group.tokens)).toEqual([group.part])
  })

  it('has words for every choice, and for no other', () => {
    for (const [name, part] of Object.entries(partsOf(kind))) {
      const choices = part.is === 'yesNo' ? ['false', 'true'] : [...(part.of ?? [])]
      expect(
        Object.keys(
          choiceWords({ id: 'r1', kind, value: SENTENCES[kind].start } as Rule, name),
        ).sort(),
      ).toEqual(choices.sort())
    }
  })

  it('asks about every part that may be not known yet, and about no other', () => {
    const asked = Object.entries(partsOf(kind)).filter(([, part]) => part.asked === true)
    const asks = Object.keys(SENTENCES[kind].asks ?? {})
    expect(asks.sort()).toEqual(asked.map(([name]) => name).sort())
  })

  it('begins with a value that is a rule', () => {
    const rule = { id: 'r1', kind, value: SENTENCES[kind].start }
    expect(ruleSchema.safeParse(rule).error?.issues).toBeUndefined()
  })
})
