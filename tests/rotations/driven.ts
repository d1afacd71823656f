/** A plan read as it is written, slot by slot: stints and shifts, for pricing it without the planner's model. */
import type { Problem, Segment } from '@pitlamp/planner'
import type { Plan } from '@pitlamp/race'

export type Sheet = Pick<Plan, 'spans' | 'stops'>
type Line = Sheet['spans'][number]

/** Between two moments at which anything may change, in meeting time; whose stop lies at its beginning. */
export interface Piece {
  readonly segment: Segment
  readonly fromAt: number
  readonly toAt: number
  readonly stop?: 'given' | 'chosen'
}

export interface Stint {
  readonly person: string
  readonly pieces: readonly Piece[]
}

/** Lines at the controller in order; one who drives on over a lane change goes on with the stint. */
export function stintsOf(problem: Problem, sheet: Sheet): readonly Stint[] {
  const stints: { person: string; pieces: Piece[]; last: Line }[] = []
  for (const [place, segment] of problem.segments.entries()) {
    const lines = sheet.spans
      .filter((line) => line.duty === 'controller' && line.segment === segment.id)
      .sort((a, b) => a.fromMs - b.fromMs)
    for (const line of lines) {
      const pieces = piecesOf(problem, sheet, segment).filter(
        ({ fromAt, toAt }) =>
          fromAt >= segment.startsAt + line.fromMs && toAt <= segment.startsAt + line.toMs,
      )
      const last = stints.at(-1)
      if (last?.person === line.person && continues(problem, place, [last.last, line])) {
        last.pieces.push(...pieces)
        last.last = line
      } else stints.push({ person: line.person, pieces, last: line })
    }
  }
  return stints
}

/** Over a lane change, from the end of one segment to the beginning of the next. */
export function continues(
  { segments }: Problem,
  place: number,
  [line, next]: readonly [Line, Line],
): boolean {
  const [before, segment] = [segments[place - 1], segments[place]]
  return (
    before?.id === line.segment &&
    segment?.after === 'laneChange' &&
    line.toMs === before.lengthMs &&
    next.fromMs === 0
  )
}

function piecesOf(problem: Problem, sheet: Sheet, segment: Segment): readonly Piece[] {
  const { id, startsAt, lengthMs, stops, cutsMs = [], gridMs = Infinity } = segment
  const edges = new Set([0, lengthMs, ...stops.map(({ atMs }) => atMs), ...cutsMs])
  for (let ms = gridMs; ms < lengthMs; ms += gridMs) edges.add(ms)
  for (const pin of problem.pins) {
    if (pin.segment !== id) continue
    for (const ms of pin.kind === 'stop' ? [pin.atMs] : [pin.fromMs, pin.toMs]) edges.add(ms)
  }
  const sorted = [...edges].sort((a, b) => a - b)
  return sorted.slice(1).map((toMs, place) => {
    const fromMs = sorted[place] ?? 0
    const isMade = sheet.stops.some((stop) => stop.segment === id && stop.atMs === fromMs)
    const isGiven = stops.some(({ atMs }) => atMs === fromMs)
    return {
      ...{ segment, fromAt: startsAt + fromMs, toAt: startsAt + toMs },
      ...(isMade ? { stop: isGiven ? ('given' as const) : ('chosen' as const) } : {}),
    }
  })
}

/** What counts as driving: no standing where stops do not, and lane changes driven on over where those do. */
export function drivenMs({ stop, counting }: Problem, { pieces }: Stint): number {
  const runs = pieces.map(({ fromAt, toAt, stop: stops }) => {
    const standsMs = stops && !counting.stops ? stop.standsMs : 0
    return Math.max(0, toAt - fromAt - standsMs)
  })
  const first = pieces[0]
  const last = pieces.at(-1)
  const onTrackMs = pieces.reduce((sum, { fromAt, toAt }) => sum + toAt - fromAt, 0)
  const betweenMs = first && last ? last.toAt - first.fromAt - onTrackMs : 0
  return runs.reduce((sum, ms) => sum + ms, 0) + (counting.laneChanges ? betweenMs : 0)
}
