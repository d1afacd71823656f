import type { SegmentItem } from '../documents/rules.ts'
import { inForce } from '../fold/in-force.ts'
import type { State } from '../fold/state.ts'
import { lanesOf, type Lane } from '../time/lanes.ts'
import { segmentsOf } from '../time/programme.ts'

export interface TimelineSegment {
  readonly id: string
  readonly name?: string
  /** Counted from 0. */
  readonly index: number
  /** Meeting time, about while it is ahead. */
  readonly startsAt: number
  readonly endsAt?: number
  /** Absent where it is counted in laps. */
  readonly lengthMs?: number
  readonly lane?: NonNullable<SegmentItem['lane']>
  /** The lane's, where the race is run on several. */
  readonly track?: number
  /** What lies between it and the segment before. */
  readonly after: 'start' | 'laneChange' | 'break'
  readonly over: boolean
}

/** The segments of the rules in force, abandoned ones that never ran left out. */
export function timelineSegments(state: State, now: number): readonly TimelineSegment[] {
  const between = betweenSegments(state, now)
  const lanes = lanesOf(state, now)
  return segmentsOf(state, now).flatMap(({ item, index, startsAt, endsAt, lengthMs, ...rest }) => {
    if (rest.state === 'abandoned' && !rest.run) return []
    const lane = lanes.get(item.id)
    const segment: TimelineSegment = {
      ...{ id: item.id, index, startsAt, after: between.get(item.id) ?? 'break' },
      ...(item.name === undefined ? {} : { name: item.name }),
      ...(endsAt === undefined ? {} : { endsAt }),
      ...(lengthMs === undefined ? {} : { lengthMs }),
      ...(typeof lane === 'object' ? onTrack(lane) : lane === undefined ? {} : { lane }),
      over: rest.state === 'over' || rest.state === 'abandoned',
    }
    return [segment]
  })
}

function onTrack({ lane, track }: Lane): Pick<TimelineSegment, 'lane' | 'track'> {
  return track === undefined ? { lane } : { lane, track }
}

/** A lane change alone, or nothing at all, leaves drivers where they are; anything else is a break. */
function betweenSegments(state: State, now: number): ReadonlyMap<string, TimelineSegment['after']> {
  const after = new Map<string, TimelineSegment['after']>()
  let so: TimelineSegment['after'] = 'start'
  for (const item of inForce(state, 'rules', now)?.programme ?? []) {
    if (item.kind === 'segment') {
      after.set(item.id, so)
      so = 'laneChange'
    } else if (so === 'laneChange' && item.kind !== 'laneChange') so = 'break'
  }
  return after
}
