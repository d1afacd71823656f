import type { Term } from '../linear/model.ts'
import { allStops } from '../rotation/mandatory.ts'
import { taskColumn } from '../rotation/tasks.ts'
import type { RuleKind } from './rule-kind.ts'

/** Something done at so many stops, of the named segments together or of all; one task a stop. */
export interface StopTask {
  readonly id: string
  readonly kind: 'stopTask'
  readonly task: string
  readonly times: number
  readonly segments?: readonly string[]
}

export const stopTask: RuleKind<StopTask> = {
  rows: ({ id: tag, task, times, segments }, rotation) => {
    const done = allStops(rotation).flatMap((stop): Term[] => {
      const isHere = segments === undefined || segments.includes(stop.slot.segment.id)
      const column = isHere ? taskColumn(rotation, task, stop) : undefined
      return column === undefined ? [] : [[column, 1]]
    })
    rotation.row(done, { atLeast: times, tag })
  },
}
