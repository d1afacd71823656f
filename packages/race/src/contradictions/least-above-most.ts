import { durationInWords, shareInWords } from '../checks/in-words.ts'
import type { Rule, RuleKind } from '../rules/index.ts'
import { known, type NotKnownYet } from '../rules/shape.ts'
import { SENTENCES } from '../sentences/index.ts'
import type { Contradiction } from './contradiction.ts'
import type { Look } from './ground.ts'

interface Bounds {
  readonly rule: string
  readonly kind: RuleKind
  /** What else must be the same for two rules to be about one thing. */
  readonly about: string
  readonly who?: string
  readonly least?: number
  readonly most?: number
  readonly inWords: (value: number) => string
}

/** A minimum above a maximum, in one rule or in two of a kind that are about the same people. */
export const leastAboveMost: Look = ({ rules }) => {
  const bounds = rules.flatMap((rule) => boundsOf(rule) ?? [])
  return bounds.flatMap((low) =>
    bounds.flatMap((high): Contradiction[] => {
      const { least } = low
      const { most } = high
      if (least === undefined || most === undefined || least <= most) return []
      if (low.kind !== high.kind || low.about !== high.about || !shareSomebody(low, high)) return []
      const { called } = SENTENCES[low.kind]
      return [
        {
          id: `leastAboveMost:${low.rule}:${high.rule}`,
          rules: [...new Set([low.rule, high.rule])],
          what: `${called}: at least ${low.inWords(least)}, and at most ${high.inWords(most)}.`,
          why:
            low.rule === high.rule
              ? 'Nothing can be both.'
              : 'Two rules say so, and nothing can be both.',
        },
      ]
    }),
  )
}

function shareSomebody(one: Bounds, other: Bounds): boolean {
  if (one.who === undefined || other.who === undefined) return true
  return one.who.toLowerCase() === other.who.toLowerCase()
}

function boundsOf(rule: Rule): Bounds | undefined {
  switch (rule.kind) {
    case 'drivingTime':
    case 'continuousDriving':
      return bounds(rule, [rule.value.atLeastMs, rule.value.atMostMs], durationInWords)
    case 'blockDriving': {
      const { blockMs, atLeastMs, atMostMs } = rule.value
      const block = known(blockMs)
      const of = bounds(rule, [atLeastMs, atMostMs], durationInWords)
      if (block === undefined) return of
      // Nobody can drive for longer in a block than it is.
      return { ...of, about: String(block), most: Math.min(of.most ?? block, block) }
    }
    case 'drivingShare':
      return bounds(rule, [rule.value.atLeast, rule.value.atMost], shareInWords)
    case 'drivingSegments':
    case 'stintsEach':
    case 'numberOfDrivers':
      return bounds(rule, [rule.value.atLeast, rule.value.atMost], String)
    case 'numberOfChanges':
      return {
        ...bounds(rule, [rule.value.atLeast, rule.value.atMost], String),
        about: rule.value.of,
      }
    default:
      return undefined
  }
}

type Asked = number | NotKnownYet | undefined

function bounds(
  { id, kind, value }: Rule,
  [least, most]: readonly [Asked, Asked],
  inWords: Bounds['inWords'],
): Bounds {
  const who = 'who' in value && kind !== 'whoWorks' ? { who: value.who } : {}
  const said = { least: known(least), most: known(most) }
  return { rule: id, kind, about: '', inWords, ...who, ...said }
}
