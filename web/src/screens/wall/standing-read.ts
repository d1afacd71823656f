/** What is read off the venue's screen: our place and laps, and those around us. */
import { segmentClock, standing, type Body, type Distance } from '@pitlamp/race'
import { countOf } from '../../parts/pad-number.ts'
import type { Seen } from './people.ts'
import type { ToRecord } from './to-record.ts'

export const STANDING_FIELDS = [
  'place',
  'ours',
  'oursSection',
  'ahead',
  'aheadSection',
  'behind',
  'behindSection',
] as const
export type StandingField = (typeof STANDING_FIELDS)[number]
export type Typed = { readonly [F in StandingField]?: string }

export interface StandingFields {
  readonly fields: readonly StandingField[]
  /** As it was read last: our place stays until another is typed. */
  readonly place?: number
  readonly last: { readonly [F in StandingField]?: string }
}

/** While cars run there are whole laps only. */
export function standingFields({ state, now }: Seen): StandingFields {
  const last = standing(state, now)
  const runs = segmentClock(state, now) !== undefined
  const section = (distance: Distance | undefined) =>
    distance?.sections === undefined ? undefined : String(distance.sections)
  const laps = (distance: Distance | undefined) => distance && String(distance.laps)
  return {
    fields: STANDING_FIELDS.filter((field) => !runs || !field.endsWith('Section')),
    place: last?.place,
    last: {
      place: last && String(last.place),
      ours: laps(last?.shown),
      oursSection: section(last?.shown),
      ahead: laps(last?.ahead?.theirs),
      aheadSection: section(last?.ahead?.theirs),
      behind: laps(last?.behind?.theirs),
      behindSection: section(last?.behind?.theirs),
    },
  }
}

/** Undefined until a place and our laps are known. Whoever leads has nobody ahead. */
export function standingRead(seen: Seen, typed: Typed): ToRecord | undefined {
  const { state, now } = seen
  const last = standing(state, now)
  const place = countOf(typed.place ?? '') ?? last?.place
  const ours = lineOf(typed, 'ours', { place, entrant: 'We' })
  if (place === 0 || !ours) return undefined
  const ahead = lineOf(typed, 'ahead', {
    place: ours.place > 1 ? ours.place - 1 : undefined,
    entrant: last?.ahead?.entrant ?? 'Ahead of us',
  })
  const behind = lineOf(typed, 'behind', {
    place: ours.place + 1,
    entrant: last?.behind?.entrant ?? 'Behind us',
  })
  const lines = [...(ahead ? [ahead] : []), { ...ours, ours: true }, ...(behind ? [behind] : [])]
  const body = { standing: 'provisional', scope: 'whole', lines, ...asAt(seen) } as const
  return { kind: 'classification.1', body: { ...body, lines }, word: 'Standing' }
}

type Line = Body<'classification.1'>['lines'][number]

function lineOf(
  typed: Typed,
  whose: 'ours' | 'ahead' | 'behind',
  { place, entrant }: { readonly place: number | undefined; readonly entrant: string },
): Line | undefined {
  const laps = countOf(typed[whose] ?? '')
  if (laps === undefined || place === undefined) return undefined
  const section = countOf(typed[`${whose}Section`] ?? '')
  return { place, entrant, laps, ...(section === undefined ? {} : { section }) }
}

function asAt({ state, now }: Seen) {
  const clock = segmentClock(state, now)
  return clock && { segment: clock.segment.item.id, asAtClockMs: Math.round(clock.elapsedMs) }
}
