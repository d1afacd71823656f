import { driversWho, type Bench, type BenchPerson } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import type { Stint } from '../stints.ts'
import { leastAndMost, SENSES } from './least-and-most.ts'
import { beginningOf } from './relay.ts'

/**
 * Goes by the driven time of each stint. A stint that is too short only because its segment ended is judged like
 * any other, and says so. Too much is decided when the limit is passed, too little when the stint is over: the one
 * a timeline ends with may still go on.
 */
export const continuousDriving: Check<'continuousDriving'> = {
  axis: 'meeting',
  limits: ({ who, atLeastMs, atMostMs }, bench) => {
    const lastAt = Math.max(...bench.timeline.spans.map(({ toAt }) => toAt))
    return leastAndMost('A stint lasts', { atLeast: atLeastMs, atMost: atMostMs }, (sense, limit) =>
      driversWho(bench, who).flatMap((driver) =>
        driver.stints.map((stint): Case => ({
          sense,
          unit: 'ms',
          limit,
          value: stint.drivenMs,
          at: sense === 'atMost' ? passedAt(stint, limit) : stint.toAt,
          people: [driver.id],
          spans: stint.spanIds,
          ...(sense === 'atLeast' && stint.toAt >= lastAt ? { untilTheEnd: true } : {}),
          says: () => inWords(bench, { driver, stint, sense, limit }),
        })),
      ),
    )
  },
}

/** When more than so much has been driven; the end where it never is. */
function passedAt({ driven, toAt }: Stint, limit: number): number {
  let left = limit
  for (const piece of driven) {
    const ms = piece.toAt - piece.fromAt
    if (ms > left) return piece.fromAt + left
    left -= ms
  }
  return toAt
}

interface Said {
  readonly driver: BenchPerson
  readonly stint: Stint
  readonly sense: Case['sense']
  readonly limit: number
}

function inWords(bench: Bench, { driver, stint, sense, limit }: Said): string {
  const isCutShort = sense === 'atLeast' && stint.drivenMs < limit && endsWithSegment(bench, stint)
  return `${driver.name}’s stint from ${placeInWords(bench, beginningOf(stint))} lasts ${durationInWords(stint.drivenMs)}, ${SENSES[sense]} ${durationInWords(limit)}${isCutShort ? '; its segment ended' : ''}.`
}

function endsWithSegment({ timeline }: Bench, { spans, toAt }: Stint): boolean {
  const last = spans.at(-1)
  const segment = timeline.segments.find(({ id }) => id === last?.segment)
  if (!segment || !last) return false
  if (segment.lengthMs !== undefined && last.toMs >= segment.lengthMs) return true
  return segment.over && segment.endsAt !== undefined && toAt >= segment.endsAt
}
