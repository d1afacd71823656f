import type { RuleValue } from '../../rules/index.ts'
import { known } from '../../rules/shape.ts'
import type { Bench } from '../bench.ts'
import type { Case, Check, Limit } from '../case.ts'
import { countInWords, durationInWords } from '../in-words.ts'
import { segmentsDriven } from './driving-segments.ts'
import { SENSES, whileItLasts } from './least-and-most.ts'
import { shareDown, shareUp } from './shares.ts'

type Bounds = Readonly<Record<Case['sense'], number>>

/**
 * Time: the race clock of all segments but sit-outs ÷ those who drive; less than a millisecond is no difference.
 * Segments: those all drivers drive in, added up, ÷ those who drive; where that is no whole number nobody can have
 * the same, and the rule is broken. Where a segment is counted in laps the time driven takes the place of the race,
 * once it is over. Of two tolerances the narrower counts; none at all is 0.
 */
export const equalShare: Check<'equalShare'> = {
  axis: 'meeting',
  limits: (value, bench) => {
    if (bench.drivers.length === 0) return []
    const bounds = value.of === 'time' ? boundsOfTime(value, bench) : boundsOfSegments(value, bench)
    if (!bounds) return []
    return (['atLeast', 'atMost'] as const).map((sense) => limitOf(sense, bounds, { value, bench }))
  },
}

interface Of {
  readonly value: RuleValue<'equalShare'>
  readonly bench: Bench
}

function limitOf(sense: Case['sense'], bounds: Bounds, { value: { of }, bench }: Of): Limit {
  const limit = bounds[sense]
  const called = `${of === 'time' ? 'Equal driving time' : 'Equal number of segments'}, ${SENSES[sense]}`
  const cases = bench.drivers.map((driver): Case => {
    const value = of === 'time' ? driver.drivenMs : segmentsDriven(driver)
    const drives = of === 'time' ? durationInWords(value) : `in ${countInWords(value, 'segment')}`
    const share = of === 'time' ? durationInWords(limit) : String(limit)
    return {
      sense,
      unit: of === 'time' ? 'ms' : 'count',
      limit,
      value,
      people: [driver.id],
      spans: driver.drivingIds,
      // How many segments are equal is known at the end: each may still be shared by more drivers.
      ...(of === 'segments' ? { untilTheEnd: true } : whileItLasts(sense)),
      says: () =>
        `${driver.name} drives ${drives}; shared equally among ${countInWords(bench.drivers.length, 'driver')} it is ${SENSES[sense]} ${share}.`,
    }
  })
  return { name: sense, called, cases }
}

function boundsOfTime({ tolerance, toleranceMs }: Of['value'], bench: Bench): Bounds | undefined {
  const among = bench.drivers.length
  const totalMs = timeToShare(bench)
  const [share, ms] = [known(tolerance), known(toleranceMs)]
  if (totalMs === undefined) return undefined
  const said = [
    ...(share === undefined
      ? []
      : [
          {
            atLeast: shareDown(totalMs, 1_000 - share, among),
            atMost: shareUp(totalMs, 1_000 + share, among),
          },
        ]),
    ...(ms === undefined
      ? []
      : [
          {
            atLeast: shareDown(totalMs, 1_000, among) - ms,
            atMost: shareUp(totalMs, 1_000, among) + ms,
          },
        ]),
  ]
  if (said.length === 0) {
    if (tolerance !== undefined || toleranceMs !== undefined) return undefined
    return { atLeast: shareDown(totalMs, 1_000, among), atMost: shareUp(totalMs, 1_000, among) }
  }
  return {
    atLeast: Math.max(...said.map(({ atLeast }) => atLeast)),
    atMost: Math.min(...said.map(({ atMost }) => atMost)),
  }
}

function timeToShare({ timeline, drivers }: Bench): number | undefined {
  const segments = timeline.segments.filter(({ lane }) => lane !== 'sitOut')
  const isTimed = segments.every(({ lengthMs }) => lengthMs !== undefined)
  if (isTimed) return segments.reduce((sum, { lengthMs = 0 }) => sum + lengthMs, 0)
  return timeline.isWhole ? drivers.reduce((sum, { drivenMs }) => sum + drivenMs, 0) : undefined
}

function boundsOfSegments({ tolerance }: Of['value'], bench: Bench): Bounds | undefined {
  const share = tolerance === undefined ? 0 : known(tolerance)
  if (share === undefined) return undefined
  const driven = bench.drivers.reduce((sum, driver) => sum + segmentsDriven(driver), 0)
  const raced = bench.timeline.segments.filter(({ lane }) => lane !== 'sitOut').length
  const total = bench.timeline.isWhole ? driven : Math.max(driven, raced)
  const among = bench.drivers.length
  return {
    atLeast: shareUp(total, 1_000 - share, among),
    atMost: shareDown(total, 1_000 + share, among),
  }
}
