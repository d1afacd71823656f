/** The race cut into slots: between two moments at which anything may change, in order. */
import type { GivenStop, Segment } from '../problem/segment.ts'
import type { Problem } from '../problem/problem.ts'

export interface Slot {
  readonly index: number
  readonly segment: Segment
  readonly fromMs: number
  readonly toMs: number
  readonly fromAt: number
  readonly toAt: number
  /** What lies at its beginning. */
  readonly begins: 'start' | 'laneChange' | 'break' | 'stop' | 'mayStop' | 'cut'
  /** The given stop it begins with. */
  readonly stop?: GivenStop
  /** The car has a lane. */
  readonly runs: boolean
  /** Raced already. */
  readonly isPast: boolean
}

/** Where stops may be chosen: the segment's own moments, its grid, and stops pinned by hand. Never its ends. */
export function mayStopAt(segment: Segment, { pins }: Problem): readonly number[] {
  const { id, lengthMs, gridMs, mayStopAtMs = [], past } = segment
  const times = gridMs === undefined || gridMs <= 0 ? 0 : Math.ceil(lengthMs / gridMs) - 1
  const onGrid = Array.from({ length: times }, (_, place) => (place + 1) * (gridMs ?? 0))
  const pinned = pins.flatMap((pin) =>
    pin.kind === 'stop' && pin.segment === id ? [pin.atMs] : [],
  )
  return [...mayStopAtMs, ...onGrid, ...pinned].filter(
    (ms) => ms > (past?.untilMs ?? 0) && ms < lengthMs,
  )
}

export function slotsOf(problem: Problem): readonly Slot[] {
  const slots: Slot[] = []
  for (const segment of problem.segments) {
    const may = new Set(mayStopAt(segment, problem))
    const edges = edgesOf(segment, problem, may)
    edges.slice(1).forEach((toMs, place) => {
      const fromMs = edges[place] ?? 0
      const stop = segment.stops.find(({ atMs }) => atMs === fromMs && fromMs > 0)
      slots.push({
        index: slots.length,
        segment,
        fromMs,
        toMs,
        fromAt: segment.startsAt + fromMs,
        toAt: segment.startsAt + toMs,
        begins: fromMs === 0 ? segment.after : stop ? 'stop' : may.has(fromMs) ? 'mayStop' : 'cut',
        ...(stop ? { stop } : {}),
        runs: segment.lane !== 'sitOut',
        isPast: toMs <= (segment.past?.untilMs ?? 0),
      })
    })
  }
  return slots
}

function edgesOf(segment: Segment, { pins }: Problem, may: ReadonlySet<number>): readonly number[] {
  const { id, lengthMs, stops, cutsMs = [], past } = segment
  const pinned = pins.flatMap((pin) =>
    pin.kind !== 'stop' && pin.segment === id ? [pin.fromMs, pin.toMs] : [],
  )
  const raced = past ? [past.untilMs, ...past.spans.flatMap((one) => [one.fromMs, one.toMs])] : []
  const all = [...stops.map(({ atMs }) => atMs), ...cutsMs, ...may, ...pinned, ...raced]
  const inside = all.filter((ms) => ms > 0 && ms < lengthMs)
  return [...new Set([0, ...inside, lengthMs])].sort((a, b) => a - b)
}

/** Whether a stint goes on from one slot into the next without being over. */
export function goesOn(before: Slot | undefined, slot: Slot | undefined): boolean {
  if (!before || !slot || !before.runs || !slot.runs) return false
  return slot.begins !== 'break' && slot.begins !== 'start'
}
