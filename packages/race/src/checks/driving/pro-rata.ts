/** Limits of driving time cut in proportion when the race is shortened. */
import { ruleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import type { Bench } from '../bench.ts'
import type { Case } from '../case.ts'
import { durationInWords } from '../in-words.ts'

export interface CutLimit {
  readonly limit: number
  /** What a sentence adds, after a comma: nothing where the limit stands as it is written. */
  readonly words: string
}

/**
 * Whole milliseconds: what is at least is rounded up, what is at most down. While the rules say not yet whether
 * limits are cut, only what is at most is: the reading that cannot cost a penalty.
 */
export function cutProRata(bench: Bench, sense: Case['sense'], limit: number): CutLimit {
  const { shortened } = bench.timeline
  const rule = ruleValue(bench.regulations.rules, 'cutProRata')
  const cut = known(rule?.cut)
  const assumed = rule !== undefined && cut === undefined
  if (!shortened || !(cut === true || (assumed && sense === 'atMost'))) return { limit, words: '' }
  const down = product(limit, shortened.toMs, shortened.fromMs)
  const isWhole = BigInt(down) * BigInt(shortened.fromMs) === BigInt(limit) * BigInt(shortened.toMs)
  return {
    limit: sense === 'atLeast' && !isWhole ? down + 1 : down,
    words: `, cut from ${durationInWords(limit)}${assumed ? ', assuming it is' : ''}`,
  }
}

/** Exact where the product is beyond what a number holds: days by days in milliseconds. */
function product(limit: number, by: number, of: number): number {
  return Number((BigInt(limit) * BigInt(by)) / BigInt(of))
}
