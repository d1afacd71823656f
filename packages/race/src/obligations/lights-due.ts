/** Lights to be tried before a dark segment. */
import { lightTest } from '../clocks/lights.ts'
import { segmentName } from '../fold/names.ts'
import type { State } from '../fold/state.ts'
import { standsStill } from '../time/standing-still.ts'
import type { Obligation } from './obligation.ts'

/** Due when the segment begins, until they are in order. */
export function lightsDue(state: State, now: number): readonly Obligation[] {
  const test = lightTest(state, now)
  if (!test || test.state === 'inOrder') return []
  const { item, startsAt } = test.segment
  const name = segmentName(state, item.id)
  return [
    {
      id: `lightTest:${item.id}`,
      kind: 'lightTest',
      dueAt: startsAt,
      held: standsStill(state, test.segment, now),
      concerns: [],
      label:
        test.state === 'open'
          ? `Try the lights: ${name} is dark`
          : `Lights not in order: ${name} is dark`,
    },
  ]
}
