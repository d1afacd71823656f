import { known } from '../../rules/shape.ts'
import type { BenchPerson } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { apart } from '../stints.ts'
import type { Stretch } from '../stretches.ts'

/** Of everybody who both drives and marshals in this meeting. */
export const marshalWhileDriving: Check<'marshalWhileDriving'> = {
  axis: 'meeting',
  limits: ({ allowed }, { people }) => {
    if (known(allowed) !== false) return []
    const cases = people.flatMap(casesOf)
    return [{ name: 'atOnce', called: 'Driving and marshalling at once', cases }]
  },
}

function casesOf(person: BenchPerson): readonly Case[] {
  const driving = apart(person.driving)
  const marshalling = apart(person.posts)
  if (driving.length === 0 || marshalling.length === 0) return []
  const both = atOnce(driving, marshalling)
  if (both.length > 0) return both.map((stretch) => caseOf(person, stretch))
  const never = { fromAt: 0, toAt: 0 }
  const { at: _at, spans: _spans, ...wholeRace } = caseOf(person, never)
  return [wholeRace]
}

/** Of two rows of stretches, each in order and apart, what lies in both. */
function atOnce(these: readonly Stretch[], those: readonly Stretch[]): readonly Stretch[] {
  const both: Stretch[] = []
  let next = 0
  for (const one of these) {
    for (; next < those.length; next += 1) {
      const other = those[next]
      if (!other || other.fromAt >= one.toAt) break
      const fromAt = Math.max(one.fromAt, other.fromAt)
      const toAt = Math.min(one.toAt, other.toAt)
      if (toAt > fromAt) both.push({ fromAt, toAt })
      if (other.toAt > one.toAt) break
    }
  }
  return both
}

function caseOf({ id, name, spans }: BenchPerson, { fromAt, toAt }: Stretch): Case {
  const value = toAt - fromAt
  return {
    sense: 'atMost',
    unit: 'ms',
    limit: 0,
    value,
    at: fromAt,
    people: [id],
    spans: spans
      .filter(({ duty }) => duty === 'controller' || duty === 'post')
      .filter((span) => span.fromAt < toAt && span.toAt > fromAt)
      .map((span) => span.id),
    says: () =>
      value > 0
        ? `${name} drives and marshals at once for ${durationInWords(value)}.`
        : `${name} never drives and marshals at once.`,
  }
}
