/**
 * A rotation told slot by slot, for judging and pricing without the model: this folder shares no code with it. One
 * post at most; nothing raced yet.
 */
import type { Problem } from '../problem/problem.ts'
import type { Segment } from '../problem/segment.ts'

export interface SketchSlot {
  readonly segment: Segment
  readonly fromMs: number
  readonly toMs: number
  readonly fromAt: number
  readonly toAt: number
  /** Race clock at its beginning, counted on from segment to segment. */
  readonly raceMs: number
  readonly begins: 'segment' | 'stop' | 'mayStop' | 'cut'
  /** Somebody at the controller or a post stays over its beginning. */
  readonly goesOn: boolean
}

export interface Sketch {
  readonly slots: readonly SketchSlot[]
  readonly drivers: readonly (string | undefined)[]
  readonly posts: readonly (string | undefined)[]
  /** The driver of the slot before begins anew. */
  readonly anew: readonly boolean[]
  /** The car stops at its beginning. */
  readonly stops: readonly boolean[]
}

export function sketchSlots({ segments }: Problem): readonly SketchSlot[] {
  let before = 0
  return segments.flatMap((segment) => {
    const { lengthMs, startsAt, stops, gridMs = Infinity, cutsMs = [] } = segment
    const may: number[] = []
    for (let ms = gridMs; ms < lengthMs; ms += gridMs) may.push(ms)
    const given = stops.map(({ atMs }) => atMs)
    const edges = [...new Set([0, ...given, ...may, ...cutsMs, lengthMs])].sort((a, b) => a - b)
    const raceMs = before
    before += lengthMs
    return edges.slice(0, -1).map((fromMs, place) => {
      const toMs = edges[place + 1] ?? lengthMs
      const inside = given.includes(fromMs) ? 'stop' : may.includes(fromMs) ? 'mayStop' : 'cut'
      return {
        ...{ segment, fromMs, toMs, fromAt: startsAt + fromMs, toAt: startsAt + toMs },
        raceMs: raceMs + fromMs,
        begins: fromMs === 0 ? 'segment' : inside,
        goesOn: fromMs > 0 || segment.after === 'laneChange',
      } as const
    })
  })
}

export interface SketchStint {
  readonly person: string
  readonly from: number
  readonly to: number
  readonly fromAt: number
  readonly toAt: number
  /** Stretches that count as driving. */
  readonly driven: readonly (readonly [number, number])[]
}

export function stintsOf(sketch: Sketch, { counting, stop }: Problem): readonly SketchStint[] {
  const stints: SketchStint[] = []
  sketch.slots.forEach((slot, at) => {
    const person = sketch.drivers[at]
    if (person === undefined) return
    const last = stints.at(-1)
    const isSame = last?.to === at && last.person === person
    const holeMs = sketch.stops[at] && !counting.stops ? stop.standsMs : 0
    const piece = [slot.fromAt + holeMs, slot.toAt] as const
    if (last && isSame && slot.goesOn && !sketch.anew[at]) {
      const change = [last.toAt, slot.fromAt] as const
      const between = slot.fromMs === 0 && counting.laneChanges ? [change] : []
      stints[stints.length - 1] = {
        ...last,
        ...{ to: at + 1, toAt: slot.toAt, driven: [...last.driven, ...between, piece] },
      }
    } else {
      stints.push({
        person,
        from: at,
        to: at + 1,
        fromAt: slot.fromAt,
        toAt: slot.toAt,
        driven: [piece],
      })
    }
  })
  return stints
}

export function lengthOf(pieces: readonly (readonly [number, number])[]): number {
  return pieces.reduce((sum, [from, to]) => sum + to - from, 0)
}

/** Shifts at the post, from slot to before slot. */
export function shiftsOf({ slots, posts }: Sketch): readonly Omit<SketchStint, 'driven'>[] {
  const shifts: Omit<SketchStint, 'driven'>[] = []
  slots.forEach(({ fromAt, toAt, goesOn }, at) => {
    const person = posts[at]
    if (person === undefined) return
    const last = shifts.at(-1)
    if (last?.to === at && last.person === person && goesOn) {
      shifts[shifts.length - 1] = { ...last, to: at + 1, toAt }
    } else shifts.push({ person, from: at, to: at + 1, fromAt, toAt })
  })
  return shifts
}
