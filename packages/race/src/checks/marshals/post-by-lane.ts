import { known } from '../../rules/shape.ts'
import type { Case, Check } from '../case.ts'
import { placeInWords } from '../places.ts'
import { staysOf } from './watches.ts'

/** Posts that have a name, in segments whose lane is drawn. */
export const postByLane: Check<'postByLane'> = {
  axis: 'none',
  limits: ({ tied }, bench) => {
    if (known(tied) !== true) return []
    const lanes = new Map(bench.timeline.segments.map(({ id, lane }) => [id, lane]))
    const cases = staysOf(bench).flatMap((stay): readonly Case[] => {
      const { post, person, segment, fromMs, fromAt, spans } = stay
      const lane = lanes.get(segment)
      if (post === undefined || typeof lane !== 'number') return []
      const value = post.trim() === String(lane) ? 0 : 1
      return [
        {
          sense: 'atMost',
          unit: 'count',
          limit: 0,
          value,
          at: fromAt,
          people: [person],
          spans,
          says: () =>
            `${bench.nameOf(person)} is at post ${post} from ${placeInWords(bench, { segment, clockMs: fromMs })}, which runs on lane ${lane}.`,
        },
      ]
    })
    return [{ name: 'tied', called: 'Posts other than the lane’s', cases }]
  },
}
