import type { AlwaysCheck, Case } from '../case.ts'
import { countInWords } from '../in-words.ts'

export const inTheCrew: AlwaysCheck = {
  called: 'Everybody is in the crew',
  axis: 'none',
  limits: ({ people }) => {
    const cases = people
      .filter(({ member }) => member === undefined)
      .map(({ id, name, spans }): Case => {
        const [first] = spans
        return {
          sense: 'atMost',
          unit: 'count',
          limit: 0,
          value: spans.length,
          ...(first ? { at: first.fromAt } : {}),
          people: [id],
          spans: spans.map((span) => span.id),
          says: () => `${name} has ${countInWords(spans.length, 'duty', 'duties')}.`,
        }
      })
    return [{ name: 'strangers', called: 'Duties of somebody not in the crew', cases }]
  },
}
