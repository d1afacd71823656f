/** How a kind of rule becomes one of the planner's: a row for each kind, or why there is none. */
import type { Rule as Planned } from '@pitlamp/planner'
import { known, type NotKnownYet, type RuleKind, type RuleOf } from '@pitlamp/race'
import type { Ground } from './ground.ts'

export type Mapping<K extends RuleKind = RuleKind> =
  /** Nothing while what it takes is not known yet. */
  | { readonly rules: (rule: RuleOf<K>, ground: Ground) => readonly Planned[] }
  | { readonly notPlanned: string }

export type Mappings<K extends RuleKind> = { readonly [Kind in K]: Mapping<Kind> }

/** Ids of what one line becomes begin with the line's, so that the line can be found again. */
export function pieceOf(line: string, piece: string | number): string {
  return `${line}/${piece}`
}

export function lineOf(id: string): string {
  const at = id.indexOf('/')
  return at < 0 ? id : id.slice(0, at)
}

/** One or both; none where neither is known. */
export function leastAndMost<T>(
  atLeast: T | NotKnownYet | undefined,
  atMost: T | NotKnownYet | undefined,
): { readonly atLeast?: T; readonly atMost?: T } | undefined {
  const [least, most] = [known(atLeast), known(atMost)]
  if (least === undefined && most === undefined) return undefined
  return {
    ...(least === undefined ? {} : { atLeast: least }),
    ...(most === undefined ? {} : { atMost: most }),
  }
}

export function inMs(limits: { readonly atLeast?: number; readonly atMost?: number }) {
  const { atLeast, atMost } = limits
  return {
    ...(atLeast === undefined ? {} : { atLeastMs: atLeast }),
    ...(atMost === undefined ? {} : { atMostMs: atMost }),
  }
}

export function ofWhom(who: string | undefined): { readonly who?: string } {
  return who === undefined ? {} : { who }
}
