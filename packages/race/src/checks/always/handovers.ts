/** Who moves where at one instant, and who must move before whom. */
import { ruleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench } from '../bench.ts'

/** Duties that end and begin at one instant of a segment. */
export interface Handover {
  readonly segment: string
  readonly at: number
  readonly clockMs: number
  readonly leaving: readonly TimelineSpan[]
  readonly arriving: readonly TimelineSpan[]
}

export interface Wait {
  readonly first: string
  readonly then: string
}

/** In order. Whoever goes on with the same duty at the same place does not move. */
export function handoversOf({ timeline }: Bench): readonly Handover[] {
  const found: Collected[] = []
  const begun = new Map<string, Map<number, Collected>>()
  const at = ({ segment }: TimelineSpan, instant: number, clockMs: number): Collected => {
    const here = begun.get(segment) ?? new Map<number, Collected>()
    const before = here.get(instant)
    if (before) return before
    const handover = { segment, at: instant, clockMs, leaving: [], arriving: [] }
    found.push(handover)
    begun.set(segment, here.set(instant, handover))
    return handover
  }
  for (const span of timeline.spans) {
    at(span, span.fromAt, span.fromMs).arriving.push(span)
    at(span, span.toAt, span.toMs).leaving.push(span)
  }
  return found
    .filter(isHandover)
    .map(withoutStayers)
    .filter(isHandover)
    .sort((a, b) => a.at - b.at)
}

function isHandover({ leaving, arriving }: Handover): boolean {
  return leaving.length > 0 && arriving.length > 0
}

interface Collected extends Handover {
  readonly leaving: TimelineSpan[]
  readonly arriving: TimelineSpan[]
}

function withoutStayers(handover: Handover): Handover {
  const stays = (one: TimelineSpan, others: readonly TimelineSpan[]) =>
    others.some((other) => other.person === one.person && isSamePlace(other, one))
  const { leaving, arriving } = handover
  return {
    ...handover,
    leaving: leaving.filter((one) => !stays(one, arriving)),
    arriving: arriving.filter((one) => !stays(one, leaving)),
  }
}

/** The same duty, and at a post the same one; posts without a name are taken for each other. */
function isSamePlace(one: TimelineSpan, other: TimelineSpan): boolean {
  return one.duty === other.duty && (one.duty !== 'post' || one.post === other.post)
}

/** What the rules say of who goes first. */
export interface Moves {
  readonly downFirst: boolean
  readonly relieved: boolean
}

export function movesOf({ regulations: { rules } }: Bench): Moves {
  return {
    downFirst: known(ruleValue(rules, 'driverChange')?.order) === 'downFirst',
    relieved: known(ruleValue(rules, 'relief')?.before) !== false,
  }
}

/**
 * At a post the relief is there before the marshal leaves, unless the rules say it need not be. At the controller
 * the new driver is there before the old one leaves, unless the rules have the old one down first; where the car
 * stands in a stop and no rule says so, either may be first. Wall and bench may be empty for a moment.
 */
export function waitsOf(
  bench: Bench,
  handover: Handover,
  { downFirst, relieved }: Moves,
): readonly Wait[] {
  const stands = hasStop(bench, handover)
  return pairsOf(handover).flatMap(({ old, relief }): Wait[] => {
    const newFirst = { first: relief.person, then: old.person }
    if (old.duty === 'post') return relieved ? [newFirst] : []
    if (downFirst) return [{ first: old.person, then: relief.person }]
    return stands ? [] : [newFirst]
  })
}

/** Somebody goes from one held place to another: without that nobody who is waited for waits. */
export function movesOn({ leaving, arriving }: Handover): boolean {
  return leaving.some(
    (one) => isHeld(one) && arriving.some((other) => other.person === one.person && isHeld(other)),
  )
}

/** Never without anybody while the race runs. */
function isHeld({ duty }: TimelineSpan): boolean {
  return duty === 'controller' || duty === 'post'
}

interface Pair {
  readonly old: TimelineSpan
  readonly relief: TimelineSpan
}

/**
 * Who takes over from whom. Where several change at posts without a name, whoever is free anyway relieves first, and
 * whoever is waited for elsewhere is relieved first, so that a ring is said only where one is left.
 */
function pairsOf({ leaving, arriving }: Handover): readonly Pair[] {
  const comesFromHeld = (one: TimelineSpan) =>
    leaving.some((other) => other.person === one.person && isHeld(other))
  const goesToHeld = (one: TimelineSpan) =>
    arriving.some((other) => other.person === one.person && isHeld(other))
  const freeFirst = [...arriving].sort((a, b) => +comesFromHeld(a) - +comesFromHeld(b))
  const waitedForFirst = [...leaving].sort((a, b) => +goesToHeld(b) - +goesToHeld(a))
  const taken = new Set<TimelineSpan>()
  return waitedForFirst.filter(isHeld).flatMap((old): Pair[] => {
    const relief = freeFirst.find((one) => !taken.has(one) && isSamePlace(one, old))
    if (!relief) return []
    taken.add(relief)
    return [{ old, relief }]
  })
}

function hasStop({ stopsIn, stopMinimumMs }: Bench, { segment, at }: Handover): boolean {
  return stopsIn(segment).some(
    (stop) => stop.at <= at && at <= (stop.outAt ?? stop.at + stopMinimumMs),
  )
}
