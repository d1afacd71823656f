import { known } from '../../rules/shape.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench, BenchPerson } from '../bench.ts'
import type { Case, Check } from '../case.ts'
import { durationInWords } from '../in-words.ts'
import { followsOn } from '../stints.ts'
import type { Stretch } from '../stretches.ts'

/** A shift goes on from post to post and over a lane change; a break ends it. */
export const marshalShift: Check<'marshalShift'> = {
  axis: 'meeting',
  limits: ({ atMostMs, restMs }, bench) => {
    const most = known(atMostMs)
    const rest = known(restMs)
    const everybody = bench.people.map((person) => ({ person, shifts: shiftsOf(person, bench) }))
    return [
      ...(most === undefined
        ? []
        : [
            {
              name: 'atMost',
              called: 'A shift lasts at most',
              cases: everybody.flatMap(({ person, shifts }) =>
                shifts.map((shift) => lasts(person, shift, most)),
              ),
            },
          ]),
      ...(rest === undefined
        ? []
        : [
            {
              name: 'rest',
              called: 'Rest between shifts, at least',
              cases: everybody.flatMap(({ person, shifts }) => rests(person, shifts, rest)),
            },
          ]),
    ]
  },
}

interface Shift extends Stretch {
  readonly spans: readonly TimelineSpan[]
}

function shiftsOf({ posts }: BenchPerson, { timeline }: Bench): readonly Shift[] {
  const shifts: Shift[] = []
  for (const span of posts) {
    const before = shifts.at(-1)
    const earlier = before?.spans.at(-1)
    if (before && earlier && goesOn(timeline, before, { earlier, span })) {
      shifts[shifts.length - 1] = {
        fromAt: before.fromAt,
        toAt: Math.max(before.toAt, span.toAt),
        spans: [...before.spans, span],
      }
    } else shifts.push({ fromAt: span.fromAt, toAt: span.toAt, spans: [span] })
  }
  return shifts
}

function goesOn(
  timeline: Bench['timeline'],
  shift: Shift,
  { earlier, span }: { readonly earlier: TimelineSpan; readonly span: TimelineSpan },
): boolean {
  return span.fromAt <= shift.toAt || followsOn(timeline, earlier, span)
}

function lasts({ id, name }: BenchPerson, shift: Shift, limit: number): Case {
  const value = shift.toAt - shift.fromAt
  return {
    sense: 'atMost',
    unit: 'ms',
    limit,
    value,
    at: shift.toAt - 1,
    people: [id],
    spans: shift.spans.map((span) => span.id),
    says: () =>
      `${name} marshals ${durationInWords(value)} without a break, at most ${durationInWords(limit)}.`,
  }
}

function rests(
  { id, name }: BenchPerson,
  shifts: readonly Shift[],
  limit: number,
): readonly Case[] {
  return shifts.slice(1).flatMap((shift, place): readonly Case[] => {
    const before = shifts[place]
    if (!before) return []
    const value = shift.fromAt - before.toAt
    return [
      {
        sense: 'atLeast',
        unit: 'ms',
        limit,
        value,
        at: shift.fromAt,
        people: [id],
        spans: [...before.spans.slice(-1), ...shift.spans.slice(0, 1)].map((span) => span.id),
        says: () =>
          `${name} has ${durationInWords(value)} between two shifts, at least ${durationInWords(limit)}.`,
      },
    ]
  })
}
