import type { Regulations } from '../documents/rules.ts'
import { ASSUMED_POLICY, type Clock, type ClockPolicy, type Interruption } from './clock-policy.ts'
import { rulesOf } from './index.ts'
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
  for (const { value, clause } of rulesOf(regulations?.rules ?? [], 'clockPolicy')) {
    const does = known(value.does)
    if (does === undefined || value.clock !== clock || value.under !== under) continue
    return { does, assumed: false, ...(clause === undefined ? {} : { clause }) }
  }
  return { does: ASSUMED_POLICY[clock], assumed: true }
}
