import type { Regulations } from '../documents/rules.ts'
import { ASSUMED_POLICY, type Clock, type ClockPolicy, type Interruption } from './clocks.ts'
import { known } from './shape.ts'

export interface PolicyFor {
  readonly does: ClockPolicy
  /** No rule says so (absent, or not known yet): the reading that cannot cost a penalty was taken. */
  readonly assumed: boolean
  readonly clause?: string
}

/** What one clock does under one kind of interruption; the first rule that says so counts. */
export function policyFor(
  regulations: Regulations | undefined,
  clock: Clock,
  under: Interruption,
): PolicyFor {
  for (const rule of regulations?.rules ?? []) {
    if (rule.kind !== 'clockPolicy') continue
    const { value, clause } = rule
    const does = known(value.does)
    if (does === undefined || value.clock !== clock || value.under !== under) continue
    return clause === undefined ? { does, assumed: false } : { does, assumed: false, clause }
  }
  return { does: ASSUMED_POLICY[clock], assumed: true }
}
