/** The controller as it goes from hand to hand. */
import type { Bench, Turn } from '../bench.ts'
import type { Stint } from '../stints.ts'

export interface Change {
  readonly from: Turn
  readonly to: Turn
}

/** Each turn with the one before it. */
export function changesOf({ turns }: Bench): readonly Change[] {
  return turns.flatMap((to, index) => {
    const from = turns[index - 1]
    return from ? [{ from, to }] : []
  })
}

/** To another driver, also over a break, or with oneself within a segment; not whoever goes on after a break. */
export function isChange({ from, to }: Change): boolean {
  return from.driver.id !== to.driver.id || to.stint.fromAt <= from.stint.toAt
}

/** Where a stint begins on the race clock. */
export function beginningOf({ spans }: Stint): {
  readonly segment: string
  readonly clockMs: number
} {
  return { segment: spans[0]?.segment ?? '', clockMs: spans[0]?.fromMs ?? 0 }
}
