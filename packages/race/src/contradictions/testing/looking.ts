/** Rules and a crew written by hand, in which one kind of contradiction is looked for. */
import type { CrewMember } from '../../documents/crew.ts'
import type { ProgrammeItem, SegmentItem } from '../../documents/rules.ts'
import type { Rule, RuleKind, RuleValue } from '../../rules/index.ts'
import { groundOf, type Look } from '../ground.ts'

export const MINUTE = 60_000
export const HOUR = 60 * MINUTE

export interface Written {
  /** Segments of an hour each, or the items themselves; one where nothing is said. */
  readonly programme?: number | readonly ProgrammeItem[]
  /** People by name, and what is said of them. */
  readonly people?: Readonly<Record<string, Partial<CrewMember>>>
}

export function looking(
  look: Look,
  rules: readonly Rule[],
  { programme = 1, people = {} }: Written,
) {
  const items =
    typeof programme === 'number'
      ? Array.from({ length: programme }, (_, index) => segment(`s${index + 1}`))
      : programme
  const crew = Object.entries(people).map(([name, rest]) => ({
    id: name,
    name,
    duties: [],
    ...rest,
  }))
  const regulations = { name: 'By hand', timeZone: 'Europe/Dublin', programme: [...items] }
  return look(groundOf({ ...regulations, rules: [...rules] }, { people: crew }))
}

/** Both sentences of each, as one. */
export function said(look: Look, rules: readonly Rule[], written: Written = {}): readonly string[] {
  return looking(look, rules, written).map(({ what, why }) => `${what} ${why}`)
}

export function rule<K extends RuleKind>(kind: K, value: RuleValue<K>, id: string = kind): Rule {
  return { id, kind, value } as Rule
}

export function segment(id: string, minutes = 60, rest: Partial<SegmentItem> = {}): SegmentItem {
  return { id, kind: 'segment', length: { by: 'time', lengthMs: minutes * MINUTE }, ...rest }
}

/** So many people who do anything. */
export function crewOf(count: number): Record<string, Partial<CrewMember>> {
  return Object.fromEntries(Array.from({ length: count }, (_, index) => [`p${index + 1}`, {}]))
}
