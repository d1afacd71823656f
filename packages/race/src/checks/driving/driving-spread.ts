import { known } from '../../rules/shape.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { cutProRata } from './pro-rata.ts'

/** Whoever drives most against whoever drives least, of those who drive; what lies between them keeps it too. */
export const drivingSpread: Check<'drivingSpread'> = {
  axis: 'meeting',
  limits: ({ atMostMs }, bench) => {
    const { drivers } = bench
    const asWritten = known(atMostMs)
    const inOrder = [...drivers].sort((a, b) => a.drivenMs - b.drivenMs)
    const [least, most] = [inOrder[0], inOrder.at(-1)]
    if (asWritten === undefined || !least || !most || least === most) return []
    const { limit, words } = cutProRata(bench, 'atMost', asWritten)
    const value = most.drivenMs - least.drivenMs
    const one: Case = {
      sense: 'atMost',
      unit: 'ms',
      limit,
      value,
      people: [most.id, least.id],
      spans: [...most.drivingIds, ...least.drivingIds],
      untilTheEnd: true,
      says: () =>
        `${most.name} drives ${durationInWords(value)} more than ${least.name}, at most ${durationInWords(limit)}${words}.`,
    }
    return [{ name: 'atMost', called: 'Two drivers differ by at most', cases: [one] }]
  },
}
