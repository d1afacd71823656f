import type { RuleValue } from '../../rules/index.ts'
import { isOf } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { placeInWords } from '../places.ts'

const DOES: Readonly<Record<RuleValue<'mayNotDo'>['duty'], readonly [string, string]>> = {
  controller: ['drives', 'drive'],
  post: ['marshals', 'marshal'],
  wall: ['holds the wall', 'hold the wall'],
  bench: ['works at the bench', 'work at the bench'],
}

/** Each duty of somebody of the category is a breach; all of one person are said together, as the first begins. */
export const mayNotDo: Check<'mayNotDo'> = {
  axis: 'none',
  limits: ({ who, duty }, bench) => {
    const [does, may] = DOES[duty]
    const people = bench.people.filter((one) => isOf(one, who))
    const cases = people.map(({ id, name, spans }): Case => {
      const there = spans.filter((span) => span.duty === duty)
      const first = there[0]
      return {
        sense: 'atMost',
        unit: 'count',
        limit: 0,
        value: there.length,
        ...(first ? { at: first.fromAt } : {}),
        people: [id],
        spans: there.map((span) => span.id),
        says: () =>
          first
            ? `${name} ${does} from ${placeInWords(bench, { segment: first.segment, clockMs: first.fromMs })}: a ${who} may not.`
            : `${name} does not ${may}: a ${who} may not.`,
      }
    })
    return [{ name: 'never', called: `A ${who} does not ${may}`, cases }]
  },
}
