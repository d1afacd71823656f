/**
 * A sentence taken apart: words, parts, and optional groups of both. `<lap|laps>` is one or several, by the count
 * before it. Of a kind it is everything that can be
 * said; of a rule only what it says, with its commas, capitals and numbers put right.
 */
import type { Rule, RuleKind } from '../rules/index.ts'
import { SENTENCES } from './index.ts'
import { withNumber } from './plural.ts'

export interface WordsToken {
  readonly is: 'words'
  readonly words: string
}
export interface PartToken {
  readonly is: 'part'
  readonly part: string
}
/** Words that are there with their part only. */
export interface OptionalToken {
  readonly is: 'optional'
  readonly part: string
  readonly tokens: readonly (WordsToken | PartToken)[]
}
export type Token = WordsToken | PartToken | OptionalToken

export function tokensOf(kind: RuleKind): readonly Token[] {
  return SENTENCES[kind].reads
    .split(/(\[[^\]]*\])/)
    .filter((piece) => piece !== '')
    .flatMap((piece): readonly Token[] => {
      if (!piece.startsWith('[')) return flat(piece)
      const tokens = flat(piece.slice(1, -1))
      const [part] = partsIn(tokens)
      return [{ is: 'optional', part: part ?? '', tokens }]
    })
}

/**
 * What this rule says, from left to right. Two optional groups next to each other are joined by *and*, unless
 * the second brings its own comma.
 */
export function saidTokens(rule: Rule): readonly (WordsToken | PartToken)[] {
  const value: Readonly<Record<string, unknown>> = rule.value
  const said: (WordsToken | PartToken)[] = []
  let afterGroup = false
  for (const token of tokensOf(rule.kind)) {
    if (token.is !== 'optional') {
      said.push(token)
      afterGroup = false
    } else if (value[token.part] !== undefined) {
      const isRunOn = afterGroup && startsWithSpace(token)
      said.push(...(isRunOn ? [{ is: 'words', words: ' and' } as const] : []), ...token.tokens)
      afterGroup = true
    }
  }
  return numbered(joined(said), value).map((token, index) =>
    index === 0 && token.is === 'words' ? { ...token, words: begun(token.words) } : token,
  )
}

/** Names of the parts that may be left out, in the order of the sentence. */
export function optionalParts(kind: RuleKind): readonly OptionalToken[] {
  return tokensOf(kind).flatMap((token) =>
    token.is === 'optional' ? [{ ...token, tokens: numbered(token.tokens, {}) }] : [],
  )
}

function flat(text: string): readonly (WordsToken | PartToken)[] {
  return text
    .split(/(\{\w+\})/)
    .filter((piece) => piece !== '')
    .map((piece) =>
      piece.startsWith('{')
        ? { is: 'part', part: piece.slice(1, -1) }
        : { is: 'words', words: piece },
    )
}

function partsIn(tokens: readonly (WordsToken | PartToken)[]): readonly string[] {
  return tokens.flatMap((token) => (token.is === 'part' ? [token.part] : []))
}

function startsWithSpace({ tokens: [first] }: OptionalToken): boolean {
  return first?.is === 'words' && /^ (?!\()/.test(first.words)
}

function joined(tokens: readonly (WordsToken | PartToken)[]): readonly (WordsToken | PartToken)[] {
  const together: (WordsToken | PartToken)[] = []
  for (const token of tokens) {
    const last = together.at(-1)
    if (token.is === 'words' && last?.is === 'words') {
      together[together.length - 1] = { is: 'words', words: last.words + token.words }
    } else together.push(token)
  }
  return together
}

/** One stop, not 1 stops: what may be one or several goes by the count that stands before it. */
function numbered(
  tokens: readonly (WordsToken | PartToken)[],
  value: Readonly<Record<string, unknown>>,
): readonly (WordsToken | PartToken)[] {
  let count: unknown
  return tokens.map((token) => {
    if (token.is === 'words') return { ...token, words: withNumber(token.words, count) }
    count = value[token.part]
    return token
  })
}

/** The value of the part before this one in what the rule says. */
export function valueBefore(rule: Rule, part: string): unknown {
  const value: Readonly<Record<string, unknown>> = rule.value
  const parts = partsIn(saidTokens(rule))
  const before = parts[parts.indexOf(part) - 1]
  return before === undefined ? undefined : value[before]
}

function begun(words: string): string {
  const trimmed = words.trimStart()
  return trimmed.slice(0, 1).toUpperCase() + trimmed.slice(1)
}
