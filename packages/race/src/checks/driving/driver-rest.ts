import type { RuleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import { driversWho, type Bench, type BenchPerson } from '../bench.ts'
import type { Case, Check, Limit } from '../case.ts'
import { durationInWords, shareInWords } from '../in-words.ts'
import { placeInWords } from '../places.ts'
import type { Stint } from '../stints.ts'
import { cutOut } from '../stretches.ts'
import { beginningOf } from './relay.ts'
import { shareUp } from './shares.ts'

/**
 * From the end of a stint to the beginning of the same driver's next, in meeting time. Where marshalling is no
 * rest, the longest stretch in between without a post counts: two short rests do not make a long one. While that
 * is not known, marshalling is taken for no rest, which cannot cost a penalty.
 */
export const driverRest: Check<'driverRest'> = {
  axis: 'meeting',
  limits: (value, bench) => {
    const rests = driversWho(bench, value.who).flatMap((driver) => restsOf(driver, value))
    const [least, share] = [known(value.atLeastMs), known(value.shareOfStint)]
    const limits: Limit[] = []
    if (least !== undefined) {
      const cases = rests.map((rest) => caseOf(bench, rest, { limit: least, of: '' }))
      limits.push({ name: 'atLeast', called: 'Rest between two stints at least', cases })
    }
    if (share !== undefined) {
      const of = `${shareInWords(share)} of the stint before, `
      const cases = rests.map((rest) =>
        caseOf(bench, rest, { limit: shareUp(rest.before.drivenMs, share), of }),
      )
      limits.push({ name: 'shareOfStint', called: 'Rest after a stint at least', cases })
    }
    return limits
  },
}

interface Rest {
  readonly driver: BenchPerson
  readonly before: Stint
  readonly after: Stint
  readonly restMs: number
  /** A post in between was taken off without a rule that says so. */
  readonly assumed: boolean
}

function restsOf(driver: BenchPerson, { marshalling }: RuleValue<'driverRest'>): readonly Rest[] {
  const holes = known(marshalling) === 'isRest' ? [] : driver.posts
  return driver.stints.flatMap((after, index): Rest[] => {
    const before = driver.stints[index - 1]
    if (!before) return []
    const between = { fromAt: before.toAt, toAt: after.fromAt }
    const free = cutOut(between, holes)
    const restMs = free.reduce((most, { fromAt, toAt }) => Math.max(most, toAt - fromAt), 0)
    const assumed =
      known(marshalling) === undefined && restMs < Math.max(0, between.toAt - between.fromAt)
    return [{ driver, before, after, restMs, assumed }]
  })
}

interface Owed {
  readonly limit: number
  readonly of: string
}

function caseOf(bench: Bench, rest: Rest, { limit, of }: Owed): Case {
  const { driver, before, after, restMs, assumed } = rest
  return {
    sense: 'atLeast',
    unit: 'ms',
    limit,
    value: restMs,
    at: after.fromAt,
    people: [driver.id],
    spans: [...before.spanIds, ...after.spanIds],
    says: () =>
      `${driver.name} rests ${durationInWords(restMs)} before the stint at ${placeInWords(bench, beginningOf(after))}, at least ${of}${durationInWords(limit)}${assumed ? ', assuming marshalling is not rest' : ''}.`,
  }
}
