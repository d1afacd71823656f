import { known } from '../../rules/shape.ts'
import { driversWho } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'

/** Who is in the crew to drive and never does has driven 0: that is for the number of drivers to say. */
export const drivingTime: Check<'drivingTime'> = {
  axis: 'meeting',
  limits: ({ who, atLeastMs, atMostMs }, bench) => {
    const cases = (sense: Case['sense'], limit: number): readonly Case[] =>
      driversWho(bench, who).map(({ id, name, drivenMs, spans }) => ({
        ...{ sense, unit: 'ms', limit, value: drivenMs },
        people: [id],
        spans: spans.filter(({ duty }) => duty === 'controller').map((span) => span.id),
        ...(sense === 'atLeast' ? { untilTheEnd: true } : {}),
        says: () =>
          `${name} drives ${durationInWords(drivenMs)}, ${sense === 'atLeast' ? 'at least' : 'at most'} ${durationInWords(limit)}.`,
      }))
    const least = known(atLeastMs)
    const most = known(atMostMs)
    return [
      ...(least === undefined
        ? []
        : [{ name: 'atLeast', called: 'Each drives at least', cases: cases('atLeast', least) }]),
      ...(most === undefined
        ? []
        : [{ name: 'atMost', called: 'Each drives at most', cases: cases('atMost', most) }]),
    ]
  },
}
