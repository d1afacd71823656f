/** Driving, which is known in meeting time, laid onto blocks of the race clock. */
import type { TimelineSpan } from '../../timeline/timeline.ts'
import type { Bench, BenchPerson } from '../bench.ts'
import { cutOut, lengthOf, type Stretch } from '../stretches.ts'

interface InBlock {
  readonly drivenMs: number
  /** Meeting time at which the last driving in it ends. */
  readonly lastAt: number
  readonly spans: readonly string[]
}

/**
 * What one person drives in each block, by its number from 0; blocks without driving are left out. A span longer in
 * meeting time than on the race clock had the clock stand for the difference: first while nothing counted as
 * driving, and for what is left at its end, where what is driven counts for the block the clock stood in.
 */
export function drivenInBlocks(
  { raceClockMs }: Bench,
  { stints }: BenchPerson,
  blockMs: number,
): ReadonlyMap<number, InBlock> {
  const blocks = new Map<number, InBlock>()
  for (const { spans, driven } of stints) {
    for (const span of spans) {
      const pieces = driven
        .map(({ fromAt, toAt }) => ({
          fromAt: Math.max(fromAt, span.fromAt),
          toAt: Math.min(toAt, span.toAt),
        }))
        .filter(({ fromAt, toAt }) => toAt > fromAt)
      const clockAt = clockOf(span, pieces)
      for (const piece of pieces) {
        for (const part of partsOf(piece, {
          clockAt,
          blockMs,
          before: raceClockMs(span.segment, 0),
        }))
          add(blocks, part, span.id)
      }
    }
  }
  return blocks
}

/** The segment's clock at an instant of a span. */
function clockOf(span: TimelineSpan, pieces: readonly Stretch[]): (at: number) => number {
  const holes = cutOut(span, pieces)
  const stoodMs = span.toAt - span.fromAt - (span.toMs - span.fromMs)
  return (at) => {
    const notDriven = lengthOf(
      holes.map(({ fromAt, toAt }) => ({ fromAt, toAt: Math.max(fromAt, Math.min(toAt, at)) })),
    )
    const ranMs = at - span.fromAt - Math.min(Math.max(0, stoodMs), notDriven)
    return Math.min(span.toMs, span.fromMs + ranMs)
  }
}

interface Onto {
  readonly clockAt: (at: number) => number
  readonly blockMs: number
  /** Race clock before the segment. */
  readonly before: number
}

interface Part {
  readonly block: number
  readonly drivenMs: number
  readonly lastAt: number
}

function partsOf({ fromAt, toAt }: Stretch, { clockAt, blockMs, before }: Onto): readonly Part[] {
  const parts: Part[] = []
  const toMs = before + clockAt(toAt)
  let at = fromAt
  let clockMs = before + clockAt(fromAt)
  while (at < toAt) {
    // The instant at which a clock ends belongs to the block before.
    const block = Math.floor((clockMs === toMs && clockMs > 0 ? clockMs - 1 : clockMs) / blockMs)
    const edgeMs = (block + 1) * blockMs
    const lastAt = toMs <= edgeMs ? toAt : at + edgeMs - clockMs
    parts.push({ block, drivenMs: lastAt - at, lastAt })
    at = lastAt
    clockMs = edgeMs
  }
  return parts
}

function add(blocks: Map<number, InBlock>, { block, drivenMs, lastAt }: Part, span: string): void {
  const before = blocks.get(block) ?? { drivenMs: 0, lastAt, spans: [] }
  blocks.set(block, {
    drivenMs: before.drivenMs + drivenMs,
    lastAt: Math.max(before.lastAt, lastAt),
    spans: before.spans.includes(span) ? before.spans : [...before.spans, span],
  })
}
