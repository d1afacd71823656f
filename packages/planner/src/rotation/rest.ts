/**
 * Rest between two stints, in meeting time. Whoever drives is taken until the rest is over: a flow along the slots
 * like driving, in which a stint ends where its driver may begin again.
 */
import { times, type Term } from '../linear/model.ts'
import type { Grid } from '../grid/grid.ts'
import type { Rotation, Stint } from './rotation.ts'

export interface RestOwed {
  readonly tag: string
  readonly owedMs: (stint: Stint) => number
}

export function addRest(rotation: Rotation, person: string, owed: RestOwed): void {
  const stints = rotation.stintsOf(person)
  const taken = stints.map((stint): Taken => {
    const free = freeFrom(rotation.grid, stint.to, owed.owedMs(stint))
    return { ...stint, until: Math.min(free, nextPast(stint, stints)) }
  })
  const add = rotation.isLong ? addFlow : addSums
  add(rotation, taken, owed.tag)
}

/** A stint and the first slot in which its driver may begin again. */
interface Taken extends Stint {
  readonly until: number
}

function addSums({ grid, model }: Rotation, taken: readonly Taken[], tag: string): void {
  const all = grid.slots.map((): Term[] => [])
  for (const { from, until, column } of taken) {
    for (const here of all.slice(from, until)) here.push([column, 1])
  }
  for (const here of all) if (here.length > 1) model.row(here, { atMost: 1, tag })
}

function addFlow({ grid, model }: Rotation, taken: readonly Taken[], tag: string): void {
  let before: readonly Term[] = []
  for (const { index } of grid.slots) {
    const begins = taken.filter(({ from }) => from === index)
    const ends = taken.filter(({ until }) => until === index)
    if (before.length === 0 && begins.length === 0) continue
    const now: Term = [model.part(), 1]
    const moved = [...ends.map(({ column }): Term => [column, 1]), ...times(before, -1)]
    const came = begins.map(({ column }): Term => [column, -1])
    model.row([now, ...came, ...moved], { atLeast: 0, atMost: 0, tag })
    before = [now]
  }
}

/** The first slot that begins so long after the one before `to` is over. */
export function freeFrom({ slots }: Grid, to: number, owedMs: number): number {
  const endAt = slots[to - 1]?.toAt ?? 0
  let at = to
  while (at < slots.length && (slots[at]?.fromAt ?? 0) - endAt < owedMs) at += 1
  return at
}

/** What was raced with too little rest was raced so. */
function nextPast(stint: Stint, stints: readonly Stint[]): number {
  if (!stint.isPast) return Infinity
  const next = stints.filter(({ isPast, from }) => isPast && from >= stint.to)
  return Math.min(Infinity, ...next.map(({ from }) => from))
}
