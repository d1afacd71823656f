import type { RuleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import { hoursOfClock } from '../../time/hours-of-clock.ts'
import { isOf, type Bench, type BenchPerson } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { longestFree } from '../rests.ts'
import type { Stretch } from '../stretches.ts'

/**
 * Of everybody who has any duty: the longest stretch of the race, breaks included, without one. At the wall and at
 * the bench nobody rests; at a post only where the rules say that marshalling is rest. Within hours of the clock it
 * is not judged before the rules say when midnight is.
 */
export const restBlock: Check<'restBlock'> = {
  axis: 'meeting',
  limits: (value, bench) => {
    const limit = known(value.atLeastMs)
    const windows = windowsOf(value, bench)
    if (limit === undefined || !windows) return []
    const isRest = known(value.marshalling) === 'isRest'
    const assumed = known(value.marshalling) === undefined
    const people = bench.people.filter(
      (one) => hasDuty(one) && (value.who === undefined || isOf(one, value.who)),
    )
    const cases = people.map((person): Case => {
      const restMs = longestFree(dutiesOf(person, isRest), windows)
      return {
        sense: 'atLeast',
        unit: 'ms',
        limit,
        value: restMs,
        people: [person.id],
        untilTheEnd: true,
        says: () =>
          `${person.name}’s longest rest is ${durationInWords(restMs)}, at least ${durationInWords(limit)}${assumed ? ', assuming marshalling is not rest' : ''}.`,
      }
    })
    return [{ name: 'atLeast', called: 'One long rest of at least', cases }]
  },
}

/** Time off is no duty. */
function hasDuty({ spans }: BenchPerson): boolean {
  return spans.some(({ duty }) => duty !== 'offDuty')
}

function dutiesOf({ spans }: BenchPerson, marshallingIsRest: boolean): readonly Stretch[] {
  return spans.filter(({ duty }) => duty !== 'offDuty' && !(duty === 'post' && marshallingIsRest))
}

/** Undefined where hours of the clock are named and nothing tells when they are. */
function windowsOf(value: RuleValue<'restBlock'>, bench: Bench): readonly Stretch[] | undefined {
  const race = raceOf(bench)
  const [from, to] = [known(value.from), known(value.to)]
  if (value.from === undefined && value.to === undefined) return race ? [race] : []
  const { midnightAt } = bench.regulations
  const fromMs = from ?? to
  const toMs = to ?? from
  if (midnightAt === undefined || fromMs === undefined || toMs === undefined) return undefined
  return race ? hoursOfClock({ midnightAt, fromMs, toMs }, race) : []
}

/** From the first green to the end, or as far as anybody has a duty. */
function raceOf({ timeline }: Bench): Stretch | undefined {
  const { segments, spans } = timeline
  const [first] = segments
  if (!first) return undefined
  const ends = timeline.isWhole ? segments.map(({ endsAt, startsAt }) => endsAt ?? startsAt) : []
  const toAt = [...ends, ...spans.map((span) => span.toAt)].reduce((a, b) => Math.max(a, b), 0)
  return toAt > first.startsAt ? { fromAt: first.startsAt, toAt } : undefined
}
