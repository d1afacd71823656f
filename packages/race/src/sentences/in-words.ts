/** A rule written out, as print, findings and the log say it. */
import { durationInWords, shareInWords } from '../checks/in-words.ts'
import { RULE_KINDS } from '../rules/kinds/index.ts'
import type { Part } from '../rules/parts.ts'
import type { Rule, RuleKind } from '../rules/index.ts'
import { NOT_KNOWN_YET } from '../rules/shape.ts'
import { SENTENCES } from './index.ts'
import { withNumber } from './plural.ts'
import { saidTokens, valueBefore } from './tokens.ts'

export interface SentenceNames {
  /** What a segment is called. */
  readonly segment: (id: string) => string
}

/** Below it lengths are said in seconds. */
const SECONDS_BELOW_MS = 120_000

const PARTS = new Map<RuleKind, Readonly<Record<string, Part>>>(
  RULE_KINDS.map(({ kind, parts }) => [kind, parts]),
)

/** The parts of a kind by their names. */
export function partsOf(kind: RuleKind): Readonly<Record<string, Part>> {
  return PARTS.get(kind) ?? {}
}

/** What the choices of one part read as in this rule: `motor` where it counts one. */
export function choiceWords(rule: Rule, part: string): Readonly<Record<string, string>> {
  const words: Readonly<Record<string, Readonly<Record<string, string>> | undefined>> =
    SENTENCES[rule.kind].words ?? {}
  const count = valueBefore(rule, part)
  return Object.fromEntries(
    Object.entries(words[part] ?? {}).map(([choice, text]) => [choice, withNumber(text, count)]),
  )
}

/** The whole sentence; a part that is not known says so. */
export function sentenceOf(rule: Rule, names: SentenceNames): string {
  const value: Readonly<Record<string, unknown>> = rule.value
  const parts = partsOf(rule.kind)
  const text = saidTokens(rule)
    .map((token) => {
      if (token.is === 'words') return token.words
      const part = parts[token.part]
      const words = choiceWords(rule, token.part)
      return part ? valueInWords(part, value[token.part], { words, names }) : ''
    })
    .join('')
  return text.slice(0, 1).toUpperCase() + text.slice(1)
}

interface Wording {
  readonly words: Readonly<Record<string, string>>
  readonly names: SentenceNames
}

/** One part; `–` for a list with nothing in it. Lengths under two minutes in seconds: `45 s`. */
export function valueInWords(part: Part, value: unknown, { words, names }: Wording): string {
  if (value === NOT_KNOWN_YET) return 'not known yet'
  switch (part.is) {
    case 'duration':
      return lengthInWords(Number(value))
    case 'share':
      return shareInWords(Number(value))
    case 'clockTime':
      return clockTimeInWords(Number(value))
    case 'count':
    case 'words':
    case 'category':
      return String(value)
    case 'yesNo':
    case 'choice':
      return words[String(value)] ?? String(value)
    case 'choices':
      return listed(linesOf(value).map((one) => words[String(one)] ?? String(one)))
    case 'counts':
    case 'names':
      return linesOf(value).join(', ') || '–'
    case 'segments':
      return listed(linesOf(value).map((id) => names.segment(String(id))))
    case 'windows':
      return listed((linesOf(value) as readonly Stretch[]).map((one) => stretchInWords(one, names)))
  }
}

interface Stretch {
  readonly segment: string
  readonly fromMs: number
  readonly toMs: number
}

function stretchInWords({ segment, fromMs, toMs }: Stretch, names: SentenceNames): string {
  return `${names.segment(segment)} from ${durationInWords(fromMs)} to ${durationInWords(toMs)}`
}

function linesOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : []
}

function lengthInWords(ms: number): string {
  if (ms >= SECONDS_BELOW_MS) return durationInWords(ms)
  const tenths = Math.round(ms / 100)
  return tenths % 10 === 0 ? `${tenths / 10} s` : `${Math.floor(tenths / 10)}.${tenths % 10} s`
}

function clockTimeInWords(ms: number): string {
  const minutes = Math.floor(ms / 60_000)
  const two = (value: number) => (value < 10 ? `0${value}` : String(value))
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`
}

/** `a, b and c`. */
function listed(lines: readonly string[]): string {
  const last = lines.at(-1)
  if (last === undefined) return '–'
  return lines.length === 1 ? last : `${lines.slice(0, -1).join(', ')} and ${last}`
}
