/** Ties broken in the order of the rules. */
import type { RuleValue } from '../rules/index.ts'

export type TieBreak = Exclude<RuleValue<'ties'>['order'], 'notKnownYet'>[number]

/** Entrants as equal as the result has them. */
export interface Tie {
  readonly entrants: readonly string[]
  /** What decides it and is not in the log; absent where the rules name nothing more. */
  readonly waitsFor?: TieBreak
}

export interface Broken {
  /** First to last; those that stay equal stand together. */
  readonly groups: readonly (readonly string[])[]
  /** By what each entrant was set apart from those it was equal with. */
  readonly by: ReadonlyMap<string, TieBreak>
  readonly ties: readonly Tie[]
}

export interface Evidence {
  /** Below 0 where `a` comes first; undefined where the log does not know it of all of them. */
  readonly compare: (
    by: TieBreak,
    entrants: readonly string[],
  ) => ((a: string, b: string) => number) | undefined
}

/**
 * The first in order decides, and of those it leaves equal the next one. What the log does not know (a run-off, a
 * best lap) ends it: what comes after in the rules may not decide before it.
 */
export function breakTie(
  entrants: readonly string[],
  order: readonly TieBreak[],
  evidence: Evidence,
): Broken {
  if (entrants.length < 2) return { groups: [entrants], by: new Map(), ties: [] }
  const [first, ...rest] = order
  const compare = first && evidence.compare(first, entrants)
  if (!first || !compare) {
    const tie: Tie = first ? { entrants, waitsFor: first } : { entrants }
    return { groups: [entrants], by: new Map(), ties: [tie] }
  }
  const groups = grouped([...entrants].sort(compare), compare)
  const broken = groups.map((group) => breakTie(group, rest, evidence))
  const here = groups.length > 1 ? entrants.map((one) => [one, first] as const) : []
  return {
    groups: broken.flatMap((one) => one.groups),
    by: new Map([...here, ...broken.flatMap((one) => [...one.by])]),
    ties: broken.flatMap((one) => one.ties),
  }
}

/** Runs of equal ones of a list in order. */
export function grouped<T>(
  inOrder: readonly T[],
  compare: (a: T, b: T) => number,
): readonly (readonly T[])[] {
  const groups: T[][] = []
  for (const one of inOrder) {
    const group = groups.at(-1)
    const [before] = group ?? []
    if (group && before !== undefined && compare(before, one) === 0) group.push(one)
    else groups.push([one])
  }
  return groups
}
