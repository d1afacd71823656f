import { known } from '../../rules/shape.ts'
import { isOf, type Turn } from '../bench.ts'
import type { Case, Check } from '../case.ts'

/** Who drives first is decided as it happens; who drives last only by a timeline that reaches to the end. */
export const endDriver: Check<'endDriver'> = {
  axis: 'none',
  limits: ({ which, who, may }, bench) => {
    const how = known(may)
    const turns = bench.turns
    const turn = which === 'first' ? turns[0] : lastOf(turns)
    if (how === undefined || !turn || (which === 'last' && !bench.timeline.isWhole)) return []
    const one: Case = {
      sense: how === 'must' ? 'atLeast' : 'atMost',
      unit: 'count',
      limit: how === 'must' ? 1 : 0,
      value: isOf(turn.driver, who) ? 1 : 0,
      ...(which === 'first' ? { at: turn.stint.fromAt } : {}),
      people: [turn.driver.id],
      spans: turn.stint.spanIds,
      says: () =>
        `${turn.driver.name} drives ${which}: a ${who} ${how === 'must' ? 'must' : 'may not'}.`,
    }
    const called = `A ${who} ${how === 'must' ? 'drives' : 'does not drive'} ${which}`
    return [{ name: how, called, cases: [one] }]
  },
}

function lastOf(turns: readonly Turn[]): Turn | undefined {
  return turns.reduce<Turn | undefined>(
    (last, one) => (last === undefined || one.stint.toAt >= last.stint.toAt ? one : last),
    undefined,
  )
}
