import { known } from '../../rules/shape.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { controllerSpans } from './relay.ts'

/** Whoever drives most against whoever drives least, of those who drive; what lies between them keeps it too. */
export const drivingSpread: Check<'drivingSpread'> = {
  axis: 'meeting',
  limits: ({ atMostMs }, { drivers }) => {
    const limit = known(atMostMs)
    const inOrder = [...drivers].sort((a, b) => a.drivenMs - b.drivenMs)
    const [least, most] = [inOrder[0], inOrder.at(-1)]
    if (limit === undefined || !least || !most || least === most) return []
    const value = most.drivenMs - least.drivenMs
    const one: Case = {
      sense: 'atMost',
      unit: 'ms',
      limit,
      value,
      people: [most.id, least.id],
      spans: [...controllerSpans(most), ...controllerSpans(least)],
      untilTheEnd: true,
      says: () =>
        `${most.name} drives ${durationInWords(value)} more than ${least.name}, at most ${durationInWords(limit)}.`,
    }
    return [{ name: 'atMost', called: 'Two drivers differ by at most', cases: [one] }]
  },
}
