/** What race control does or says. Power, not a flag, starts and stops a slot race. */
import * as z from 'zod/mini'
import { clockMs, count, durationMs, id, lineId, name, shiftMs, timeMs, words } from '../scalars.ts'

/** A segment is named by its line in the programme. */
const segment = lineId

const penaltyWhat = z.enum([
  'warning',
  'laps',
  'secondsHeld',
  'stopAndGo',
  'driveThrough',
  'position',
  'lossOfSegment',
  'exclusion',
])

const classifiedLine = z.strictObject({
  place: count,
  entrant: name,
  laps: count,
  /** Track section after the last whole lap: a second whole number, never a decimal of the first. */
  section: z.optional(count),
  ours: z.optional(z.boolean()),
})

export const raceControlKinds = {
  /** Cars run from the grid: the segment's clock starts at 0, or goes on after a red flag. */
  'green.1': z.strictObject({ segment }),
  /** Power off, or all cars slowed. */
  'trackCall.1': z.strictObject({}),
  'powerOn.1': z.strictObject({}),
  'redFlag.1': z.strictObject({}),
  /** The segment is over; for the last one this is the flag. */
  'segmentEnd.1': z.strictObject({ segment }),
  'segmentChanged.1': z.strictObject({
    segment,
    change: z.discriminatedUnion('what', [
      z.strictObject({ what: z.literal('length'), lengthMs: durationMs }),
      z.strictObject({ what: z.literal('abandoned') }),
      z.strictObject({
        what: z.literal('runAgain'),
        lapsCount: z.boolean(),
        drivingCounts: z.boolean(),
      }),
    ]),
  }),
  /** What the hall's clock shows at this moment. */
  'clockRead.1': z.strictObject({ segment, shows: z.enum(['toGo', 'gone']), readingMs: clockMs }),
  'programmeMoved.1': z.strictObject({ fromItem: lineId, byMs: shiftMs }),
  /**
   * Where we begin, from this segment on or from the first: on a lane, or in a segment sat out (which one of the
   * order, where it has several). All that come after follow by the order of lanes. Lanes are counted on from track
   * to track.
   */
  'startDrawn.1': z.strictObject({
    lane: z.nullable(count),
    sitOut: z.optional(count),
    group: z.optional(count),
    segment: z.optional(segment),
  }),
  /** The lane for a segment, or a sit-out. */
  'laneDrawn.1': z.strictObject({ segment, lane: z.nullable(count) }),
  'penalty.1': z.strictObject({
    what: penaltyWhat,
    laps: z.optional(count),
    heldMs: z.optional(durationMs),
    scope: z.enum(['segment', 'stage', 'race']),
    serveWithinLaps: z.optional(count),
    contestableUntil: z.optional(timeMs),
    words: z.optional(words),
  }),
  'penaltyServed.1': z.strictObject({ penalty: id }),
  'penaltyWithdrawn.1': z.strictObject({ penalty: id, words: z.optional(words) }),
  'lapsCorrected.1': z.strictObject({
    laps: z.int().check(z.minimum(-100_000), z.maximum(100_000)),
    sections: z.optional(z.int().check(z.minimum(-10_000), z.maximum(10_000))),
    words: z.optional(words),
  }),
  'ruling.1': z.strictObject({ words, rule: z.optional(lineId), appliesFrom: z.optional(timeMs) }),
  'scrutineering.1': z.strictObject({
    when: z.enum(['before', 'between', 'final']),
    verdict: z.enum(['passed', 'passedWithAdvice', 'failed']),
    words: z.optional(words),
  }),
  /** The car may be opened again. */
  'released.1': z.strictObject({}),
  'classification.1': z.strictObject({
    standing: z.enum(['provisional', 'official']),
    scope: z.enum(['segment', 'stage', 'whole']),
    segment: z.optional(segment),
    /** Race clock of the running segment at which the venue's screen showed it. */
    asAtClockMs: z.optional(clockMs),
    lines: z.array(classifiedLine).check(z.maxLength(60)),
  }),
} as const
