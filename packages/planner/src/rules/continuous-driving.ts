import { isOf } from '../grid/grid.ts'
import type { RuleKind } from './rule-kind.ts'

/** What counts as driving of one stint. */
export interface ContinuousDriving {
  readonly id: string
  readonly kind: 'continuousDriving'
  readonly who?: string
  readonly atLeastMs?: number
  readonly atMostMs?: number
}

export const continuousDriving: RuleKind<ContinuousDriving> = {
  bars: ({ who, atLeastMs = 0, atMostMs = Infinity }) => ({
    stint: ({ person, drivenMs }) =>
      isOf(person, who) && (drivenMs < atLeastMs || drivenMs > atMostMs),
  }),
}
