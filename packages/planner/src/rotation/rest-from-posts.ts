/**
 * Rest in one piece without a post. After a stint its driver is tired, and at a post or not, stays so until a rest as
 * long as the stint asks for begins and ends; only then they are fresh and may drive. One layer of slots for each
 * length of rest, and one for fresh: a flow through them.
 */
import { times, type Term } from '../linear/model.ts'
import { earlyMs } from './early.ts'
import { freeFrom, type RestOwed } from './rest.ts'
import type { Rotation, Stint } from './rotation.ts'

export function addRestFromPosts(rotation: Rotation, person: string, owed: RestOwed): void {
  const flow: Flow = { rotation, person, tag: owed.tag, rested: new Map(), resting: new Map() }
  for (const [restMs, stints] of layersOf(rotation.stintsOf(person), owed.owedMs)) {
    addTired(flow, restMs, stints)
  }
  addFresh(flow)
  for (const [slot, rest] of flow.resting) {
    const posts = rotation.onDuty(person, 'post', slot)
    if (posts.length > 0) rotation.model.row([...posts, ...rest], { atMost: 1, tag: owed.tag })
  }
}

interface Flow {
  readonly rotation: Rotation
  readonly person: string
  readonly tag: string
  /** Rests by the slot they are over at. */
  readonly rested: Map<number, Term[]>
  /** Rests by the slots they lie over. */
  readonly resting: Map<number, Term[]>
}

function addTired(flow: Flow, restMs: number, stints: readonly Stint[]): void {
  const { rotation, tag, rested, resting } = flow
  const { grid, model } = rotation
  let tired: readonly Term[] = []
  for (const { index } of grid.slots) {
    const came = stints.filter(({ to }) => to === index).map(({ column }): Term => [column, 1])
    if (tired.length === 0 && came.length === 0) continue
    const rest: Term = [model.part(), 1]
    const until = freeFrom(grid, index, restMs)
    put(rested, until, rest)
    for (let slot = index; slot < until; slot += 1) put(resting, slot, rest)
    keepWhole(flow, rest, { index, until, restMs })
    const stays: Term = [model.part(), 1]
    const moved = times([...came, ...tired], -1)
    model.row([stays, rest, ...moved], { atLeast: 0, atMost: 0, tag })
    tired = [stays]
  }
}

/** Fresh before the first stint; driving takes it away, a rest gives it back. */
function addFresh({ rotation, person, tag, rested }: Flow): void {
  const { grid, model } = rotation
  let before: readonly Term[] = []
  for (const { index } of grid.slots) {
    const fresh: Term = [model.part(), 1]
    const moved = [...before, ...(rested.get(index) ?? [])]
    const begins = rotation.startsOf(person, index)
    const first = index === 0 ? 1 : 0
    model.row([fresh, ...begins, ...times(moved, -1)], { atLeast: first, atMost: first, tag })
    before = [fresh]
  }
}

/** A relief comes early, which must not cut the rest short that ends with the slot before. */
function keepWhole(
  { rotation, person, tag }: Flow,
  rest: Term,
  { index, until, restMs }: { index: number; until: number; restMs: number },
): void {
  const { slots, problem } = rotation.grid
  const next = slots[until]
  const spareMs = (next?.fromAt ?? Infinity) - (slots[index - 1]?.toAt ?? 0) - restMs
  if (!next || next.fromMs === 0 || spareMs >= earlyMs(problem)) return
  const begun = rotation.places
    .filter(({ duty }) => duty === 'post')
    .flatMap((place) => rotation.begunAt(place, person, until))
  if (begun.length > 0) rotation.model.row([...begun, rest], { atMost: 1, tag })
}

function layersOf(
  stints: readonly Stint[],
  owedMs: RestOwed['owedMs'],
): ReadonlyMap<number, readonly Stint[]> {
  const layers = new Map<number, Stint[]>()
  for (const stint of stints) put(layers, wasFollowed(stint, stints) ? 0 : owedMs(stint), stint)
  return layers
}

/** What was raced with too little rest was raced so. */
function wasFollowed(stint: Stint, stints: readonly Stint[]): boolean {
  return stint.isPast && stints.some(({ isPast, from }) => isPast && from >= stint.to)
}

function put<T>(map: Map<number, T[]>, at: number, one: T): void {
  const before = map.get(at)
  if (before) before.push(one)
  else map.set(at, [one])
}
