import type { CrewMember } from '../../documents/crew.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { cutOut, lengthOf, type Stretch } from '../stretches.ts'
import { doesInWords, stretchInWords } from './duties.ts'

/** Whoever has a duty is at the meeting; where nothing is said all the time, and always while off duty. */
export const isThere: AlwaysCheck = {
  called: 'Everybody is there',
  axis: 'meeting',
  limits: (bench) => {
    const cases = bench.people.flatMap(({ id, name, member, spans }) => {
      const there = presenceOf(member)
      if (there.length === 0) return []
      return spans.flatMap((span): Case[] => {
        const away = cutOut(span, there)
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

function presenceOf(member: CrewMember | undefined): readonly Stretch[] {
  return (member?.there ?? []).map(({ fromAt = -Infinity, toAt = Infinity }) => ({ fromAt, toAt }))
}
