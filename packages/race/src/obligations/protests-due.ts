import { resultProtest } from '../clocks/after-the-flag.ts'
import type { State } from '../fold/state.ts'
import { penalties } from '../standing/penalties.ts'
import type { Obligation } from './obligation.ts'

/** Until when penalties and a provisional result may be protested, while that is known and not over. */
export function protestsDue(state: State, now: number): readonly Obligation[] {
  const ofPenalties = penalties(state, now).map(({ penalty, protest }) => ({
    ...{ entry: penalty.entry, protest, label: 'Protest against the penalty: last moment' },
  }))
  const result = resultProtest(state, now)
  const ofResult = result ? [{ ...result, label: 'Protest against the result: last moment' }] : []
  return [...ofPenalties, ...ofResult].flatMap(
    ({ entry, protest, label }): readonly Obligation[] => {
      if (!protest || protest.over) return []
      const { until, lengthMs } = protest
      const common = { kind: 'protestEnds', dueAt: until, held: false, lengthMs } as const
      return [{ id: `protestEnds:${entry}`, ...common, concerns: [], label }]
    },
  )
}
