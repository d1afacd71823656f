/** The strip's geometry: meeting time across, and the way back from a finger to a segment's race clock. */
import type { Timeline, TimelineSegment } from '@pitlamp/race'

export interface Strip {
  readonly fromAt: number
  readonly toAt: number
  /** Pixels. */
  readonly width: number
}

export interface Position {
  readonly segment: string
  readonly clockMs: number
}

export const MINUTE_MS = 60_000
const HOUR_MS = 3_600_000
/** A segment counted in laps has no length: as wide as this until its spans reach further. */
const UNKNOWN_LENGTH_MS = HOUR_MS
const ZOOM_STEP = 2

/** From the first green to the last end; an hour where there is nothing. */
function extentOf({ segments, spans }: Timeline): { fromAt: number; toAt: number } {
  const fromAt = segments[0]?.startsAt ?? 0
  const ends = segments.map((segment) => endOf(segment))
  const toAt = Math.max(fromAt + HOUR_MS / 4, ...ends, ...spans.map((span) => span.toAt))
  return { fromAt, toAt }
}

export function endOf({ startsAt, endsAt, lengthMs }: TimelineSegment): number {
  return endsAt ?? startsAt + (lengthMs ?? UNKNOWN_LENGTH_MS)
}

/** The strip as wide as its frame, or so many times wider. */
export function stripOf(timeline: Timeline, frame: number, zoom: number): Strip {
  return { ...extentOf(timeline), width: Math.max(1, frame) * ZOOM_STEP ** zoom }
}

export function across({ fromAt, toAt, width }: Strip, at: number): number {
  return ((at - fromAt) / (toAt - fromAt)) * width
}

export function atOf({ fromAt, toAt, width }: Strip, x: number): number {
  return fromAt + (x / width) * (toAt - fromAt)
}

export function boxOf(
  strip: Strip,
  { fromAt, toAt }: { readonly fromAt: number; readonly toAt: number },
): { readonly x: number; readonly width: number } {
  const x = across(strip, fromAt)
  return { x, width: across(strip, toAt) - x }
}

/** A minute where a minute can be hit with a thumb, otherwise five. */
export function snapOf(strip: Strip): number {
  return across(strip, strip.fromAt + MINUTE_MS) >= 3 ? MINUTE_MS : 5 * MINUTE_MS
}

export function snapped(ms: number, snapMs: number): number {
  return Math.round(ms / snapMs) * snapMs
}

/** The segment an instant lies in, or the nearest one, and its race clock there, kept inside. */
export function positionOf(
  segments: readonly TimelineSegment[],
  at: number,
  snapMs: number,
): Position | undefined {
  const away = (segment: TimelineSegment) => Math.max(segment.startsAt - at, at - endOf(segment), 0)
  const nearest = segments.reduce<TimelineSegment | undefined>(
    (best, one) => (best === undefined || away(one) < away(best) ? one : best),
    undefined,
  )
  if (!nearest) return undefined
  const lengthMs = endOf(nearest) - nearest.startsAt
  const clockMs = Math.min(lengthMs, Math.max(0, snapped(at - nearest.startsAt, snapMs)))
  return { segment: nearest.id, clockMs }
}

const EVERY_MINUTES = [5, 15, 30, 60, 120, 180, 240, 360, 720, 1_440]

/** Full hours, or parts of one, as close as their words allow, none of them running out at the end. */
export function marksOn(strip: Strip, apartPx: number): readonly number[] {
  const apartMs = (apartPx * (strip.toAt - strip.fromAt)) / strip.width
  const minutes = EVERY_MINUTES.find((step) => step * MINUTE_MS >= apartMs) ?? 1_440
  const every = minutes * MINUTE_MS
  const marks: number[] = []
  const lastAt = strip.toAt - apartMs
  for (let at = Math.ceil(strip.fromAt / every) * every; at <= lastAt; at += every) {
    marks.push(at)
  }
  return marks
}
