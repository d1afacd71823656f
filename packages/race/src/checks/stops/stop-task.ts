import { counted } from '../../sentences/plural.ts'
import { known } from '../../rules/shape.ts'
import type { Check } from '../case.ts'
import { endOf } from './in-segments.ts'

/**
 * At any stop, mandatory or not; a task counts once a stop, and is matched without regard to capitals. Where
 * segments are named, it is owed so often in all of them together. Whether power was on nobody records.
 */
export const stopTask: Check<'stopTask'> = {
  axis: 'none',
  limits: ({ task, times, segments }, bench) => {
    const limit = known(times)
    const named = known(segments)
    if (limit === undefined || (segments !== undefined && named === undefined)) return []
    const within = bench.timeline.segments.filter(({ id }) => named?.includes(id) ?? true)
    const stops = bench.timeline.stops.filter(
      ({ segment, tasks }) =>
        within.some(({ id }) => id === segment) && tasks.some((one) => isSame(one, task)),
    )
    const last = within.at(-1)
    const where = named ? ` in ${within.map(({ id }) => bench.segmentName(id)).join(' or ')}` : ''
    return [
      {
        name: 'times',
        called: task,
        cases: [
          {
            sense: 'atLeast',
            unit: 'count',
            limit,
            value: stops.length,
            stops: stops.map(({ id }) => id),
            ...(named && last ? endOf(last) : { untilTheEnd: true }),
            says: () => `${task}: ${counted(stops.length, 'time')}${where}, at least ${limit}.`,
          },
        ],
      },
    ]
  },
}

function isSame(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase()
}
