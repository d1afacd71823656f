import { isOf, type Grid } from '../grid/grid.ts'
import type { RuleKind } from './rule-kind.ts'

/** Who must, or may not, drive first or last. */
export interface EndDriver {
  readonly id: string
  readonly kind: 'endDriver'
  readonly which: 'first' | 'last'
  readonly who: string
  readonly must: boolean
}

export const endDriver: RuleKind<EndDriver> = {
  bars: ({ which, who, must }, grid) => ({
    stint: ({ person, from, to }) => {
      const isAtEnd = which === 'first' ? from === firstOf(grid) : to === lastOf(grid) + 1
      return isAtEnd && isOf(person, who) !== must
    },
  }),
}

function firstOf({ slots }: Grid): number {
  return slots.find(({ runs }) => runs)?.index ?? -1
}

function lastOf({ slots }: Grid): number {
  return slots.reduce((last, { runs, index }) => (runs ? index : last), -1)
}
