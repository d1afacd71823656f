/** Reading and changing the rules that are being written. Changes are made in place. */
import {
  GROUPS,
  NOT_KNOWN_YET,
  partsOf,
  RULE_KINDS,
  SENTENCES,
  type Group,
  type Part,
  type Regulations,
  type Rule,
  type RuleKind,
  withNumber,
} from '@pitlamp/race'
import { freshId } from '../../planning/defaults.ts'

type Line = { readonly id: string }

/** A fresh rule of a kind, not known yet wherever that can be. @returns its id */
export function addRule(rules: Regulations, kind: RuleKind, taken: readonly Line[] = []): string {
  const id = freshId('r', [...rules.rules, ...taken])
  rules.rules.push({ id, kind, value: structuredClone(SENTENCES[kind].start) } as Rule)
  return id
}

/** Undefined leaves the part out: nothing that is undefined is saved. */
export function setPart(rule: Rule, part: string, value: unknown): void {
  const parts = rule.value as Record<string, unknown>
  parts[part] = value
}

export function partOf(rule: Rule, part: string): unknown {
  return (rule.value as Readonly<Record<string, unknown>>)[part]
}

/** What a part that is said from now on begins with. */
export function firstValue(part: Part, categories: readonly string[]): unknown {
  if (part.asked === true) return NOT_KNOWN_YET
  switch (part.is) {
    case 'category':
      return categories[0] ?? 'novice'
    case 'words':
      return 'to be named'
    case 'duration':
      return 3_600_000
    case 'yesNo':
      return true
    case 'choice':
      return part.of?.[0]
    case 'choices':
    case 'segments':
    case 'windows':
    case 'counts':
    case 'names':
      return []
    default:
      return 1
  }
}

/** `atLeastMs` as it is called beside a value: *at least*. */
export function partName(part: string): string {
  return part.replace(/Ms$/, '').replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

export interface KindOffered {
  readonly kind: RuleKind
  readonly called: string
  /** The sentence with its gaps. */
  readonly reads: string
}
export interface GroupOffered {
  readonly group: Group
  readonly title: string
  readonly kinds: readonly KindOffered[]
}

const GROUP_NAMES = Object.keys(GROUPS) as readonly Group[]
const OFFERED = RULE_KINDS.map(({ kind }) => {
  const { group, called, words: choices = {} } = SENTENCES[kind]
  const reads = withNumber(SENTENCES[kind].reads)
  const words = Object.values(choices).flatMap((one) =>
    Object.values(one).map((text) => withNumber(text)),
  )
  return {
    ...{ kind, group, called },
    reads: withGaps(reads),
    sought: [GROUPS[group], called, reads, ...words].join(' ').toLowerCase(),
  }
})

/** Whom it is for goes without saying. */
function withGaps(reads: string): string {
  return reads
    .replace('[ ({who} only)]', '')
    .replace(/[[\]]/g, '')
    .replace(/\{\w+\}\.?/g, '…')
}

/** Kinds of rule by group; with `sought`, those that say every word of it. Groups with none are left out. */
export function kindsOffered(sought = ''): readonly GroupOffered[] {
  const words = sought.toLowerCase().split(/\s+/).filter(Boolean)
  const fits = OFFERED.filter((one) => words.every((word) => one.sought.includes(word)))
  return GROUP_NAMES.map((group) => ({
    ...{ group, title: GROUPS[group] },
    kinds: fits.filter((one) => one.group === group),
  })).filter(({ kinds }) => kinds.length > 0)
}

/** What Enter takes: a kind called so before one that only says so. */
export function likeliestKind(sought: string): RuleKind | undefined {
  const kinds = kindsOffered(sought).flatMap(({ kinds }) => kinds)
  const typed = sought.trim().toLowerCase()
  const isCalled = ({ called }: KindOffered) => called.toLowerCase() === typed
  const begins = ({ called }: KindOffered) => called.toLowerCase().startsWith(typed)
  return (kinds.find(isCalled) ?? kinds.find(begins) ?? kinds[0])?.kind
}

/** Categories of people that the rules name. */
export function categoriesIn(rules: Regulations): readonly string[] {
  const named = rules.rules.flatMap((rule) =>
    Object.entries(partsOf(rule.kind))
      .filter(([, { is }]) => is === 'category')
      .map(([part]) => partOf(rule, part)),
  )
  return [...new Set(named.filter((one) => typeof one === 'string'))]
}
