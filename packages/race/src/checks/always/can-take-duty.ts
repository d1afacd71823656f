import { DUTIES } from '../../entry/scalars.ts'
import type { AlwaysCheck, Case } from '../case.ts'
import { doesInWords, stretchInWords } from './duties.ts'

/** Duties a person can take, as the crew names them; none named means all, and off duty anybody can be. */
export const canTakeDuty: AlwaysCheck = {
  called: 'Everybody can take their duty',
  axis: 'none',
  limits: (bench) => {
    const cases = bench.people.flatMap(({ id, name, member, spans }) => {
      const can = member?.duties ?? []
      if (can.length === 0) return []
      return DUTIES.flatMap((duty): Case[] => {
        const there = spans.filter((span) => span.duty === duty)
        const [first] = there
        if (!first || duty === 'offDuty' || can.includes(duty)) return []
        return [
          {
            sense: 'atMost',
            unit: 'count',
            limit: 0,
            value: there.length,
            at: first.fromAt,
            people: [id],
            spans: there.map((span) => span.id),
            says: () =>
              `${name} ${doesInWords(first)} ${stretchInWords(bench, first)}, which the crew list does not have ${name} do.`,
          },
        ]
      })
    })
    return [{ name: 'cannot', called: 'Duties somebody cannot take', cases }]
  },
}
