/** So many people at posts, each post by its name where it has one. */
import type { Rule } from '@pitlamp/planner'
import { known, ruleValue, type TimelineSegment } from '@pitlamp/race'
import type { Ground } from './ground.ts'
import { pieceOf } from './mapping.ts'

interface Wanted {
  readonly id: string
  readonly count: number
  readonly segments: readonly TimelineSegment[]
}

/**
 * Where posts are tied to lanes, the lane's in each segment whose lane is drawn; otherwise those the plan so far names,
 * if it names as many, or posts without a name.
 */
export function postsWanted({ id, count, segments }: Wanted, ground: Ground): readonly Rule[] {
  const all = segments.map((segment) => segment.id)
  if (known(ruleValue(ground.regulations.rules, 'postByLane')?.tied) === true) {
    return segments.map(({ id: segment, lane }) => ({
      ...{ id: pieceOf(id, segment), kind: 'dutyWanted', duty: 'post', count, segments: [segment] },
      ...(typeof lane === 'number' ? { post: String(lane) } : {}),
    }))
  }
  const names = new Set(
    ground.planned.flatMap(({ duty, post }) =>
      duty === 'post' && post !== undefined ? [post] : [],
    ),
  )
  if (names.size !== count) return [{ id, kind: 'dutyWanted', duty: 'post', count, segments: all }]
  return [...names].map((post) => ({
    ...{ id: pieceOf(id, post), kind: 'dutyWanted', duty: 'post', count: 1, post },
    segments: all,
  }))
}
