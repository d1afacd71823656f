/** The controller as it goes from hand to hand: all drivers' stints in one order. */
import type { Bench, BenchPerson } from '../bench.ts'
import type { Stint } from '../stints.ts'

export interface Turn {
  readonly driver: BenchPerson
  readonly stint: Stint
}

/** In order of beginning. */
export function turnsOf({ drivers }: Bench): readonly Turn[] {
  return drivers
    .flatMap((driver) => driver.stints.map((stint): Turn => ({ driver, stint })))
    .sort((a, b) => a.stint.fromAt - b.stint.fromAt || a.stint.toAt - b.stint.toAt)
}

/** Each turn with the one before it. */
export function changesOf(bench: Bench): readonly { readonly from: Turn; readonly to: Turn }[] {
  const turns = turnsOf(bench)
  return turns.flatMap((to, index) => {
    const from = turns[index - 1]
    return from ? [{ from, to }] : []
  })
}

export function spanIds({ spans }: Stint): readonly string[] {
  return spans.map(({ id }) => id)
}

/** Ids of all spans somebody has at the controller. */
export function controllerSpans({ stints }: BenchPerson): readonly string[] {
  return stints.flatMap(spanIds)
}

/** Where a stint begins on the race clock. */
export function beginningOf({ spans }: Stint): {
  readonly segment: string
  readonly clockMs: number
} {
  return { segment: spans[0]?.segment ?? '', clockMs: spans[0]?.fromMs ?? 0 }
}
