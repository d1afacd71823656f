import { known } from '../../rules/shape.ts'
import type { Turn } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { countInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import { beginningOf } from './relay.ts'

/** Stints of one driver with nobody else's in between, over breaks too. Decided as the first one too many begins. */
export const stintsInARow: Check<'stintsInARow'> = {
  axis: 'none',
  limits: ({ atMost }, bench) => {
    const limit = known(atMost)
    if (limit === undefined) return []
    const cases = rowsOf(bench.turns).map(({ first, turns }): Case => ({
      sense: 'atMost',
      unit: 'count',
      limit,
      value: turns.length,
      at: (turns[limit] ?? turns.at(-1) ?? first).stint.fromAt,
      people: [first.driver.id],
      spans: turns.flatMap(({ stint }) => stint.spanIds),
      says: () =>
        `${first.driver.name} drives ${countInWords(turns.length, 'stint')} in a row from ${placeInWords(bench, beginningOf(first.stint))}, at most ${String(limit)}.`,
    }))
    return [{ name: 'atMost', called: 'Stints in a row at most', cases }]
  },
}

interface Row {
  readonly first: Turn
  readonly turns: readonly Turn[]
}

function rowsOf(turns: readonly Turn[]): readonly Row[] {
  const rows: { first: Turn; turns: Turn[] }[] = []
  for (const turn of turns) {
    const row = rows.at(-1)
    if (row && row.first.driver.id === turn.driver.id) row.turns.push(turn)
    else rows.push({ first: turn, turns: [turn] })
  }
  return rows
}
