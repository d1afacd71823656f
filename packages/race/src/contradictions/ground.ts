/** What every contradiction is looked for in: rules and crew, with race and drivers put together once. */
import type { Crew, CrewMember } from '../documents/crew.ts'
import type { Regulations, SegmentItem } from '../documents/rules.ts'
import type { Duty } from '../entry/scalars.ts'
import { rulesOf } from '../rules/index.ts'
import type { Contradiction } from './contradiction.ts'

export interface Ground extends Pick<Regulations, 'programme' | 'rules'> {
  readonly people: readonly CrewMember[]
  readonly segments: readonly SegmentItem[]
  /** Without sit-outs. */
  readonly run: readonly SegmentItem[]
  /** Race clock of all segments; undefined where one is counted in laps, or there is none. */
  readonly raceMs?: number
  /** Race clock of the segments that may have a lane, and of those that have one for sure. */
  readonly mostRunMs?: number
  readonly leastRunMs?: number
  /** Who may drive, and marshal: by the crew list, and by rules that keep a category from it. */
  readonly drivers: readonly CrewMember[]
  readonly marshals: readonly CrewMember[]
  readonly segmentName: (id: string) => string
}

export type Look = (ground: Ground) => readonly Contradiction[]

export function groundOf({ programme, rules }: Regulations, crew: Crew): Ground {
  const segments = programme.filter((item) => item.kind === 'segment')
  const run = segments.filter(({ lane }) => lane !== 'sitOut')
  const { people } = crew
  const may = (duty: Duty) =>
    people.filter(
      (one) => (one.duties.length === 0 || one.duties.includes(duty)) && !isKept(one, duty, rules),
    )
  return {
    ...{ programme, rules, people, segments, run },
    raceMs: lengthOf(segments),
    mostRunMs: lengthOf(run),
    leastRunMs: lengthOf(run.filter(({ lane }) => lane !== 'notDrawnYet')),
    drivers: may('controller'),
    marshals: may('post'),
    segmentName: (id) => {
      const index = segments.findIndex((segment) => segment.id === id)
      return segments[index]?.name ?? `segment ${index + 1}`
    },
  }
}

/** Categories are compared without regard to capitals. */
export function hasCategory({ categories = [] }: Pick<CrewMember, 'categories'>, who: string) {
  return categories.some((category) => category.toLowerCase() === who.toLowerCase())
}

export function timeOf({ length }: SegmentItem): number | undefined {
  return length.by === 'time' ? length.lengthMs : undefined
}

function lengthOf(segments: readonly SegmentItem[]): number | undefined {
  let sum = 0
  for (const segment of segments) {
    const lengthMs = timeOf(segment)
    if (lengthMs === undefined) return undefined
    sum += lengthMs
  }
  return segments.length === 0 ? undefined : sum
}

function isKept(person: CrewMember, duty: Duty, rules: Regulations['rules']): boolean {
  return rulesOf(rules, 'mayNotDo').some(
    ({ value }) => value.duty === duty && hasCategory(person, value.who),
  )
}

/** `The window` at the beginning of a sentence. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
