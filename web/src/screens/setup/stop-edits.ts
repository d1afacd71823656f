/** Windows and clauses of the stop rules that are being written. Changes are made in place. */
import type { Regulations, RuleKind } from '@pitlamp/race'
import { lengthOf, segmentsIn } from './contradictions.ts'
import { freshId } from './defaults.ts'
import { setRule, windowsOf } from './rule-edits.ts'

const QUARTER = 4

/** In the first segment that has fewest of them; the middle half of it, until somebody says otherwise. */
export function addWindow(rules: Regulations): void {
  const windows = windowsOf(rules)
  const counted = segmentsIn(rules).map(({ id }) => ({
    id,
    count: windows.filter(({ segment }) => segment === id).length,
  }))
  const least = counted.sort((a, b) => a.count - b.count)[0]
  if (!least) return
  const quarterMs = wholeMinutes((lengthOf(rules, least.id) ?? 3_600_000) / QUARTER)
  const window = {
    id: freshId('w', windows),
    segment: least.id,
    fromMs: quarterMs,
    toMs: 3 * quarterMs,
  }
  setRule(rules, 'stopWindows', { windows: [...windows, window] })
}

export function clauseOf(rules: Regulations, kind: RuleKind): string | undefined {
  return rules.rules.find((rule) => rule.kind === kind)?.clause
}

/** A clause belongs to a rule that is there: said before its rule, it is not kept. */
export function setClause(rules: Regulations, kind: RuleKind, clause: string | undefined): void {
  const rule = rules.rules.find((rule) => rule.kind === kind)
  if (rule) rule.clause = clause
}

function wholeMinutes(ms: number): number {
  return Math.round(ms / 60_000) * 60_000
}
