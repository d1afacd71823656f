/** A relief that is at the post before the marshal leaves it. */
import type { Problem } from '../problem/problem.ts'

/** How much earlier it comes than the slot it takes over in. */
export function earlyMs({ rules }: Problem): number {
  const early = rules.map((rule) => (rule.kind === 'relief' && rule.before ? (rule.byMs ?? 0) : 0))
  return Math.max(0, ...early)
}
