import type { RuleKind } from './rule-kind.ts'

/** Where drivers change within a segment, and whether the old one is down before the new one is up. */
export interface DriverChange {
  readonly id: string
  readonly kind: 'driverChange'
  readonly where: 'stoppedInPitLane' | 'anywhere'
  readonly order: 'downFirst' | 'anyOrder'
}

export const driverChange: RuleKind<DriverChange> = {
  bars: ({ where }, { slots }) => ({
    stint: ({ from, to }) =>
      where === 'stoppedInPitLane' &&
      [slots[from], slots[to]].some(
        (slot) => slot?.begins === 'cut' && !isNow(slots[slot.index - 1]),
      ),
  }),
}

/** Where the past ends there is an edge that is no change. */
function isNow(before: { readonly isPast: boolean } | undefined): boolean {
  return before?.isPast === true
}
