/**
 * What a rotation is worth in laps, whoever made it: each driver's running time over their lap time, with tiredness,
 * finding in and stops, and how well that is known. Works on spans, not on the model, so that it checks the solver too.
 */
import { gridOf, type Grid } from '../grid/grid.ts'
import { lapMsIn, runningMs, waitLaps } from '../grid/laps.ts'
import type { Slot } from '../grid/slots.ts'
import type { Person } from '../problem/person.ts'
import type { Problem, Span } from '../problem/problem.ts'
import type { Sheet, Stop } from './read.ts'

export interface Expected {
  /** Of what is still to come. */
  readonly laps: number
  /** Between these it ends up four times out of five, as far as the paces are known. */
  readonly fromLaps: number
  readonly toLaps: number
  readonly each: readonly DriverWorth[]
}

export interface DriverWorth {
  readonly person: string
  readonly laps: number
  /** Laps more or less for each millisecond their lap time is off. */
  readonly lapsPerMs: number
}

/** Four fifths of a normal distribution lie within so many standard deviations (tables of the normal distribution). */
export const FOUR_FIFTHS = 1.2815515655446004

/** For a sheet whose spans begin and end at edges of the problem's slots, as every answer's do. */
export function expected(problem: Problem, { spans, stops }: Sheet): Expected {
  const grid = gridOf(problem)
  const stints = stintsOf(grid, spans)
  const each = grid.drivers.map((person) =>
    worthOf(person, { grid, stops, stints: stints.filter((one) => one.person === person.id) }),
  )
  const laps = each.reduce((sum, one) => sum + one.laps, 0)
  const spread = FOUR_FIFTHS * spreadOf(grid.drivers, each)
  return { laps, fromLaps: laps - spread, toLaps: laps + spread, each }
}

/** Paces of different people are known independently. */
function spreadOf(drivers: readonly Person[], each: readonly DriverWorth[]): number {
  const squares = each.map(({ person, lapsPerMs }) => {
    const knownToMs = drivers.find(({ id }) => id === person)?.pace?.knownToMs ?? 0
    return lapsPerMs * lapsPerMs * knownToMs * knownToMs
  })
  return Math.sqrt(squares.reduce((sum, one) => sum + one, 0))
}

interface Driven {
  readonly person: string
  readonly slots: readonly Slot[]
}

/** Spans at the controller put together over lane changes, and with the past they go on from. */
function stintsOf(grid: Grid, spans: readonly Span[]): readonly Driven[] {
  const past = grid.problem.segments.flatMap(({ past }) => past?.spans ?? [])
  const driven = new Map<number, Span>()
  for (const span of [...past, ...spans]) {
    if (span.duty !== 'controller') continue
    for (const slot of grid.slots) {
      const isIn =
        span.segment === slot.segment.id && span.fromMs <= slot.fromMs && span.toMs >= slot.toMs
      if (isIn && (slot.isPast || !past.includes(span))) driven.set(slot.index, span)
    }
  }
  const stints: { person: string; slots: Slot[] }[] = []
  for (const slot of grid.slots) {
    const span = driven.get(slot.index)
    if (!span) continue
    const last = stints.at(-1)
    if (last && goesOn(grid, slot, driven)) last.slots.push(slot)
    else stints.push({ person: span.person, slots: [slot] })
  }
  return stints.filter(({ slots }) => slots.some(({ isPast }) => !isPast))
}

function goesOn(
  { goesOnAt, problem }: Grid,
  slot: Slot,
  driven: ReadonlyMap<number, Span>,
): boolean {
  const [before, span] = [driven.get(slot.index - 1), driven.get(slot.index)]
  if (!goesOnAt[slot.index] || !before || before.person !== span?.person) return false
  const isStop = slot.begins === 'stop' || slot.begins === 'mayStop'
  return before === span || !problem.counting.changeWithOneself || !isStop
}

interface OfDriver {
  readonly grid: Grid
  readonly stints: readonly Driven[]
  readonly stops: readonly Stop[]
}

function worthOf(person: Person, { grid, stints, stops }: OfDriver): DriverWorth {
  const { pace } = person
  let [laps, lapsPerMs] = [0, 0]
  if (!pace) return { person: person.id, laps, lapsPerMs }
  for (const { slots } of stints) {
    if (!slots[0]?.isPast) laps -= pace.findingInLaps
    for (const [place, slot] of slots.entries()) {
      if (slot.isPast) continue
      const { stop } = grid.problem
      const isFirst = place === 0
      const isStop =
        slot.begins === 'stop' || (isFirst && slot.begins === 'mayStop' && stopsAt(stops, slot))
      const ms = runningMs(slot, isStop, stop)
      const lapMs = lapMsIn(pace, slot, slots[0]?.fromAt ?? 0)
      laps += ms / lapMs
      lapsPerMs += ms / (lapMs * lapMs)
      if (!isFirst && slot.begins === 'mayStop' && stopsAt(stops, slot)) {
        laps -= waitLaps(pace, slot, stop)
      }
    }
  }
  return { person: person.id, laps, lapsPerMs }
}

function stopsAt(stops: readonly Stop[], { segment, fromMs }: Slot): boolean {
  return stops.some((one) => one.segment === segment.id && one.atMs === fromMs)
}
