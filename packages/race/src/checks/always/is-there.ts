import type { CrewMember } from '../../documents/crew.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { cutOut, lengthOf, type Stretch } from '../stretches.ts'
import { doesInWords, stretchInWords } from './duties.ts'

/**
 * Whoever has a duty is at the meeting; where nothing is said all the time, and always while off duty. What is
 * planned is held against what people said since, too.
 */
export const isThere: AlwaysCheck = {
  called: 'Everybody is there',
  axis: 'meeting',
  limits: (bench) => {
    const cases = bench.people.flatMap(({ id, name, member, spans }) => {
      const there = presenceOf(member)
      const said = bench.away?.get(id)
      if (there.length === 0 && !said) return []
      return spans.flatMap((span): Case[] => {
        const away = awayIn(span, there, said)
        const [first] = away
        if (!first || span.duty === 'offDuty') return []
        const value = lengthOf(away)
        return [
          {
            sense: 'atMost',
            unit: 'ms',
            limit: 0,
            value,
            at: first.fromAt,
            people: [id],
            spans: [span.id],
            says: () =>
              `${name} ${doesInWords(span)} ${stretchInWords(bench, span)} and is not there for ${durationInWords(value)} of it.`,
          },
        ]
      })
    })
    return [{ name: 'away', called: 'Duties of somebody who is away', cases }]
  },
}

/** What was raced was as it was, whatever somebody said; the crew list holds for both. */
function awayIn(
  span: TimelineSpan,
  there: readonly Stretch[],
  said: Stretch | undefined,
): readonly Stretch[] {
  const byList = there.length === 0 ? [] : cutOut(span, there)
  if (span.done || !said) return byList
  return cutOut(span, cutOut(span, [...byList, said]))
}

function presenceOf(member: CrewMember | undefined): readonly Stretch[] {
  return (member?.there ?? []).map(({ fromAt = -Infinity, toAt = Infinity }) => ({ fromAt, toAt }))
}
