import { ruleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { doesInWords, overlapsOf, stretchInWords } from './duties.ts'

/**
 * Nobody has two duties at once; off duty is one. Two spans of the same duty at the same place are one duty
 * written twice. Driving and marshalling go together where the rules allow it.
 */
export const oneDuty: AlwaysCheck = {
  called: 'One duty at a time',
  axis: 'meeting',
  limits: (bench) => {
    const both = known(ruleValue(bench.regulations.rules, 'marshalWhileDriving')?.allowed) === true
    const cases = bench.people.flatMap(({ id, name, spans }) =>
      overlapsOf(spans)
        .filter(({ one, other }) => !isSame(one, other) && !(both && isBoth(one, other)))
        .map((overlap): Case => {
          const { one, other, overlapMs, fromAt } = overlap
          return {
            sense: 'atMost',
            unit: 'ms',
            limit: 0,
            value: overlapMs,
            at: fromAt,
            people: [id],
            spans: [one.id, other.id],
            says: () =>
              `${name} ${doesInWords(one)} and ${doesInWords(other)} at once, ${stretchInWords(bench, overlap)}.`,
          }
        }),
    )
    return [{ name: 'atOnce', called: 'Two duties at once', cases }]
  },
}

function isSame(one: TimelineSpan, other: TimelineSpan): boolean {
  if (one.duty !== other.duty) return false
  return one.post === undefined || other.post === undefined || one.post === other.post
}

function isBoth(one: TimelineSpan, other: TimelineSpan): boolean {
  const duties = [one.duty, other.duty]
  return duties.includes('controller') && duties.includes('post')
}
